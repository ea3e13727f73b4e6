import type { ButtonHTMLAttributes, ReactNode } from 'react'

/** Where a held press stands. */
export type HeldState = 'idle' | 'holding' | 'early' | 'once' | 'sending'

/** How a held press looks; what it does is its owner's. */
export interface HeldFaceOf {
  readonly id: string
  readonly label: ReactNode
  readonly hint: ReactNode
  readonly state: HeldState
  readonly disabled?: boolean | undefined
  /** The two taps were offered before: they stay, or what stands above them would slide from under the thumb. */
  readonly offered?: boolean
  /** The two taps of who can't hold. */
  readonly onTwice?: () => void
  /** The focus went elsewhere: what was begun is not gone on with. */
  readonly onLeave?: () => void
  readonly events?: ButtonHTMLAttributes<HTMLButtonElement>
}

const SAID: { readonly [S in HeldState]: string } = {
  idle: '',
  holding: 'Keep holding for a second…',
  early: 'Let go too early. Nothing was pressed.',
  once: 'Press once more to confirm.',
  sending: 'Sending…',
}

/** The rubber stamp that is pressed with a held thumb, and the line that says how far it is. */
export function HeldFace(face: HeldFaceOf) {
  const { id, label, hint, state, disabled, offered, onTwice, onLeave, events } = face
  const offersTwice =
    (state === 'early' || state === 'once' || offered === true) && onTwice !== undefined
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears that the focus leaves both buttons
    <div
      className="stack tight"
      onBlur={({ currentTarget, relatedTarget }) => {
        if (!currentTarget.contains(relatedTarget)) onLeave?.()
      }}
    >
      <button
        type="button"
        className={`press ${state === 'holding' ? 'press-held' : ''}`}
        disabled={disabled ?? false}
        // Sending takes no focus away: what comes of it is said where the press was.
        aria-disabled={state === 'sending'}
        aria-describedby={`${id}-how`}
        {...events}
      >
        <svg viewBox="0 0 46 58" aria-hidden="true">
          <path d="M17 2h12v20q0 8 10 12v8H7v-8q10-4 10-12zM3 46h40v10H3z" />
        </svg>
        <span>
          <b>{label}</b>
          {hint}
        </span>
      </button>
      <span id={`${id}-how`} className="vh">
        Hold it for a second, or press Enter twice.
      </span>
      <p className="small press-says" aria-live="assertive">
        {SAID[state]}
      </p>
      {offersTwice && (
        <button type="button" className="btn btn-line btn-wide" onClick={onTwice}>
          {state === 'once' ? 'Press here once more' : 'Can’t hold it? Press here twice'}
        </button>
      )}
    </div>
  )
}
