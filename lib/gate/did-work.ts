import type { Stage } from '../record/entities/work.ts'
import type { PersonId } from '../record/ids.ts'

/** Whether that person did work on a stage: they began it, went on with it after a pause, or ended it. */
export const didWork = (stage: Stage, person: PersonId | null): boolean =>
  person !== null &&
  (stage.startedBy === person || stage.endedBy === person || stage.workedBy.includes(person))

/** Everyone whose work is in a stage, with that person; nobody is added where the work was told by phone. */
export const withHand = (stage: Stage, person: PersonId | null): PersonId[] => [
  ...new Set(person === null ? stage.workedBy : [...stage.workedBy, person]),
]
