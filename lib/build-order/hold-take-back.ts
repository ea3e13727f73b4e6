import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { HoldId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { mayClear } from './clear-hold.ts'
import { startedFollowers } from './followers.ts'

/** Takes back a release or a waiver, with a reason. Refuses once something that the point held up has begun. */
export const holdTakeBack = defineCommand({
  name: 'hold.takeBack',
  input: z.strictObject({ hold: HoldId, reason: Text }),
  may: (actor, record, input) => mayClear(actor, record, must(record.holds, input.hold)),
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
