import type { ReactNode } from 'react'

/** How a button looks and what it says; what it does is its owner's. */
export interface PressFaceOf {
  readonly line?: boolean | undefined
  readonly wide?: boolean | undefined
  readonly small?: boolean | undefined
  readonly waiting: boolean
  readonly onPress?: () => void
  /** Shows it as it stands under a thumb, or in focus, where nobody is. */
  readonly shown?: 'pressed' | 'focus'
  readonly children: ReactNode
}

/** A button for one press. While it is sent it says so, and takes no second one. */
export function PressFace({ line, wide, small, waiting, onPress, shown, children }: PressFaceOf) {
  const names = [
    'btn',
    line === true ? 'btn-line' : '',
    wide === true ? 'btn-wide' : '',
    small === true ? 'btn-small' : '',
  ]
  return (
    <button
      type="button"
      className={names.filter((part) => part !== '').join(' ')}
      aria-busy={waiting}
      data-shown={shown}
      onClick={() => {
        if (!waiting) onPress?.()
      }}
    >
      {waiting ? 'Sending…' : children}
    </button>
  )
}
