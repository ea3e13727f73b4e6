'use client'
import { useEffect, useId, useRef, useState } from 'react'
import { buzz } from '@/app/_ui/phone/buzz.ts'
import { HeldFace, type HeldFaceOf, type HeldState } from './held-face.tsx'

/** How long a thumb must lie on it. */
const HOLD_MS = 1000

/**
 * The press for what can't be taken back: held for a second, or Enter or Space twice. Lifting early does nothing, and offers two taps to who
 * can't hold. It says its progress aloud.
 */
export function HeldPress({
  label,
  hint,
  waiting,
  disabled,
  onPressed,
}: Pick<HeldFaceOf, 'label' | 'hint' | 'disabled'> & {
  readonly waiting: boolean
  readonly onPressed: () => void
}) {
  const [state, setState] = useState<HeldState>('idle')
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined)
  const [offered, setOffered] = useState(false)
  const byPointer = useRef(false)
  const id = useId()
  useEffect(() => () => clearTimeout(timer.current), [])

  const idle = waiting || disabled === true
  const finish = () => {
    setState('idle')
    buzz('done')
    onPressed()
  }
  const step = () => {
    if (idle) return
    if (state === 'once') finish()
    else setState('once')
  }
  const lift = () => {
    clearTimeout(timer.current)
    setState((now) => (now === 'holding' ? 'early' : now))
    if (state === 'holding') setOffered(true)
  }

  return (
    <HeldFace
      id={id}
      label={label}
      hint={hint}
      state={waiting ? 'sending' : state}
      disabled={disabled}
      offered={offered}
      onTwice={step}
      onLeave={() => {
        clearTimeout(timer.current)
        setState('idle')
        setOffered(false)
      }}
      events={{
        onPointerDown: (event) => {
          byPointer.current = true
          if (event.button !== 0 || idle) return
          setState('holding')
          timer.current = setTimeout(finish, HOLD_MS)
        },
        onPointerUp: lift,
        onPointerLeave: lift,
        onPointerCancel: lift,
        onContextMenu: (event) => event.preventDefault(),
        // A key kept down is one press, not many.
        onKeyDown: (event) => {
          byPointer.current = false
          if (event.repeat) event.preventDefault()
        },
        // Keys and a screen reader's own press come as a bare click; a pointer's click says nothing that holding has not said.
        onClick: ({ detail }) => {
          if (detail === 0 || !byPointer.current) step()
          byPointer.current = false
        },
      }}
    />
  )
}
