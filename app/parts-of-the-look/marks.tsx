import { Mark, type MarkName } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { StateMark, WordMark } from '@/app/_ui/state-mark.tsx'
import type { ShownState } from '@/lib/words/labels.ts'

const STATES: readonly (readonly [ShownState, string])[] = [
  ['ready', 'Every condition is met.'],
  ['waiting', 'Something has to come first.'],
  ['in work', 'Started, not signed off.'],
  ['paused', 'Put down for a while.'],
  ['ended', 'Work is over, the signature is not.'],
  ['held', 'A hold point or a yes stands in the way.'],
  ['signed off', 'Done, checks passed, signature given.'],
  ['in doubt', 'Something it relied on was reopened.'],
  ['reopened', 'Taken up again after sign-off.'],
  ['planned', 'Not looked at by the gate.'],
]
const ANSWERS: readonly (readonly [MarkName, string, string])[] = [
  ['refused', 'Refused', 'The gate or a receiver said no.'],
  ['approved', 'Approved', 'The owner said yes.'],
  ['declined', 'Declined', 'The owner said no.'],
]
const LESSER: readonly (readonly [MarkName, string])[] = [
  ['met', 'Met'],
  ['conceded', 'Conceded: a shim'],
  ['witness', 'Witness point'],
  ['clock', 'By the clock'],
  ['off', 'Off: on the hook'],
  ['run', 'Critical run'],
  ['unsent', 'Kept here, not sent'],
  ['away', 'No network'],
  ['camera', 'Camera'],
  ['scan', 'Scan a tag'],
  ['device', 'The shop’s phone'],
  ['caution', 'Caution'],
]

/** Every mark: alone and big, and in its frame with its word. */
export function Marks() {
  return (
    <>
      <section className="sheet stack">
        <Head title="States" />
        <ul className="ruled">
          {STATES.map(([state, meaning]) => (
            <li key={state} className="rowend">
              <span className="small">{meaning}</span>
              <StateMark state={state} />
            </li>
          ))}
          {ANSWERS.map(([mark, word, meaning]) => (
            <li key={mark} className="rowend">
              <span className="small">{meaning}</span>
              <WordMark mark={mark} word={word} />
            </li>
          ))}
        </ul>
      </section>
      <section className="sheet stack">
        <Head title="Lesser marks" />
        <ul className="swatches">
          {LESSER.map(([mark, word]) => (
            <li key={mark}>
              <span className="big">
                <Mark name={mark} />
              </span>
              <br />
              <span className="small">
                <Mark name={mark} /> {word}
              </span>
            </li>
          ))}
        </ul>
      </section>
    </>
  )
}
