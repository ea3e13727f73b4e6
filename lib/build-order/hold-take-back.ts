import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { HoldId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { isNamed } from './clear-hold.ts'
import { startedFollowers } from './followers.ts'

/** Takes back a release or a waiver, with a reason: whoever pressed it does, or the party named. Refuses once something that the point held up has begun. */
export const holdTakeBack = defineCommand({
  name: 'hold.takeBack',
  input: z.strictObject({ hold: HoldId, reason: Text }),
  may(actor, record, input) {
    const hold = must(record.holds, input.hold)
    const theirs = actor.party !== null && actsFor(actor, actor.party)
    return isNamed(actor, hold) || (theirs && hold.clearedBy === actor.person)
  },
  decide(record, input) {
    const hold = must(record.holds, input.hold)
    if (hold.clearedAt === null)
      return refusal(wrongState(hold.id, hold.state, 'released', 'waived'))
    const begun = startedFollowers(record, must(record.stages, hold.stage))
    if (begun.length > 0) return refusal(...begun)
    return changes({
      ...hold,
      state: hold.visitAt === null ? 'set' : 'invited',
      clearedAt: null,
      clearedBy: null,
      remark: input.reason,
    })
  },
})
