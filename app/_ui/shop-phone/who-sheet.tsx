'use client'
import type { DeviceHere } from '@/lib/command/wire-device.ts'
import type { PersonId } from '@/lib/record/ids.ts'
import { FootDialog } from './foot-dialog.tsx'

/** The shop's people as big targets: one tap, and the presses are theirs. */
export function WhoSheet({
  here,
  hand,
  onAnswer,
}: {
  readonly here: DeviceHere | null
  readonly hand: PersonId | null
  readonly onAnswer: (person: PersonId | null) => void
}) {
  return (
    <FootDialog
      title="Who works here now?"
      letBe="Leave it as it is"
      onClose={() => onAnswer(null)}
    >
      {here === null ? (
        <p>The shop’s people aren’t known on this phone yet. They come with the first signal.</p>
      ) : (
        <ul className="hands">
          {here.hands.map(({ person, name, hasCode }) => (
            <li key={person}>
              <button
                type="button"
                className="btn btn-line btn-wide"
                aria-pressed={person === hand}
                onClick={() => onAnswer(person)}
              >
                {name}
              </button>
              {person === hand && <span className="small">works here now</span>}
              {!hasCode && <span className="small">no code yet</span>}
            </li>
          ))}
        </ul>
      )}
      <p className="small">
        What is pressed from now on is theirs in the journal. A signature asks for their own code.
      </p>
    </FootDialog>
  )
}
