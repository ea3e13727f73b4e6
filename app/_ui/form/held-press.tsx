'use client'
import { type ReactNode, useEffect, useRef, useState } from 'react'

/** How long a thumb must lie on it. */
const HOLD_MS = 1000

/**
 * The press for what can't be taken back: held for a second, or Enter or Space twice. Lifting early does nothing. It says its progress
 * aloud.
 */
export function HeldPress({
  label,
  hint,
  waiting,
  disabled,
  onPressed,
}: {
  readonly label: ReactNode
  readonly hint: ReactNode
  readonly waiting: boolean
  readonly disabled?: boolean
  readonly onPressed: () => void
}) {
  const [state, setState] = useState<'idle' | 'holding' | 'once' | 'done'>('idle')
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  useEffect(() => () => clearTimeout(timer.current), [])

  const idle = waiting || disabled === true
  const finish = () => {
    setState('done')
    onPressed()
  }
  const begin = () => {
    if (idle) return
    setState('holding')
    timer.current = setTimeout(finish, HOLD_MS)
  }
  const lift = () => {
    clearTimeout(timer.current)
    setState((now) => (now === 'holding' ? 'idle' : now))
  }

  return (
    <div className="stack tight">
      <button
        type="button"
        className={`press ${state === 'holding' ? 'press-held' : ''}`}
        disabled={idle}
        onPointerDown={(event) => {
          if (event.button === 0) begin()
        }}
        onPointerUp={lift}
        onPointerLeave={lift}
        onPointerCancel={lift}
        onContextMenu={(event) => event.preventDefault()}
        onBlur={() => {
          lift()
          setState('idle')
        }}
        onKeyDown={(event) => {
          if ((event.key !== 'Enter' && event.key !== ' ') || event.repeat || idle) return
          event.preventDefault()
          if (state === 'once') finish()
          else setState('once')
        }}
        onClick={(event) => {
          // A screen reader's own press comes as a bare click: it asks for a second one, as the keys do.
          if (event.detail !== 0 || idle) return
          if (state === 'once') finish()
          else setState('once')
        }}
      >
        <svg viewBox="0 0 46 58" aria-hidden="true">
          <path d="M17 2h12v20q0 8 10 12v8H7v-8q10-4 10-12zM3 46h40v10H3z" />
        </svg>
        <span>
          <b>{label}</b>
          {hint}
        </span>
      </button>
      <p className="small" aria-live="assertive">
        {waiting
          ? 'Sending…'
          : state === 'holding'
            ? 'Keep holding for a second…'
            : state === 'once'
              ? 'Press once more to confirm.'
              : ''}
      </p>
    </div>
  )
}
