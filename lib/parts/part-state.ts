import { type Condition, wrongState } from '../record/condition.ts'
import type { Part } from '../record/entities/things.ts'

/** Why a part isn't in one of those states; a withdrawn one is in none. Empty where it is. */
export function partStateConditions(part: Part, ...needs: readonly Part['state'][]): Condition[] {
  if (part.withdrawnAt !== null)
    return [{ ...wrongState(part.id, 'withdrawn', ...needs), since: part.withdrawnAt }]
  return needs.includes(part.state) ? [] : [wrongState(part.id, part.state, ...needs)]
}
