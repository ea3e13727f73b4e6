import { type Condition, wrongState } from '../record/condition.ts'
import type { Stage, StageState } from '../record/entities/work.ts'

/** The condition that a stage is in none of those states; null where it is in one. A removed stage is in none. */
export function notIn(stage: Stage, ...states: StageState[]): Condition | null {
  const is = stage.removedAt === null ? stage.state : 'removed'
  return states.some((state) => state === is)
    ? null
    : { ...wrongState(stage.id, is, ...states), since: stage.removedAt }
}
