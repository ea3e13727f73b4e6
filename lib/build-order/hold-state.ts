import { type Condition, wrongState } from '../record/condition.ts'
import type { Hold } from '../record/entities/work.ts'

/** The condition that a point no longer waits for anybody: it is cleared or removed; null where it still holds. */
export function notOpen(hold: Hold): Condition | null {
  if (hold.removedAt !== null)
    return { ...wrongState(hold.id, 'removed', 'set', 'invited'), since: hold.removedAt }
  return hold.clearedAt === null
    ? null
    : { ...wrongState(hold.id, hold.state, 'set', 'invited'), since: hold.clearedAt }
}
