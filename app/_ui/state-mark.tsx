import { type ShownState, stateLabel } from '@/lib/words/labels.ts'
import { Mark, type MarkName } from './mark.tsx'

const marks: { readonly [S in ShownState]: MarkName } = {
  planned: 'waiting',
  ready: 'ready',
  waiting: 'waiting',
  held: 'held',
  'in work': 'work',
  paused: 'paused',
  ended: 'ended',
  'signed off': 'signed',
  'in doubt': 'doubt',
  reopened: 'reopened',
}

/** The mark of a state of a stage. */
export const markOf = (state: ShownState): MarkName => marks[state]

/** A stage's state: mark, word and frame, each saying the same. */
export function StateMark({ state }: { readonly state: ShownState }) {
  const mark = marks[state]
  return (
    <span className={`state st-${mark}`}>
      <Mark name={mark} />
      {stateLabel(state)}
    </span>
  )
}

/** Any other answer in the same frames: approved, declined, refused, waiting. */
export function WordMark({ mark, word }: { readonly mark: MarkName; readonly word: string }) {
  return (
    <span className={`state st-${mark}`}>
      <Mark name={mark} />
      {word}
    </span>
  )
}
