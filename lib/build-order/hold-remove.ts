import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { HoldId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { startedFollowers } from './followers.ts'
import { notOpen } from './hold-state.ts'
import { notIn } from './stage-state.ts'

/**
 * Takes away a hold or witness point that was set by mistake, with a reason. Refuses once it is released or waived, once
 * something that it holds up has begun, and on work that was reopened: there it is to be passed anew.
 */
export const holdRemove = defineCommand({
  name: 'hold.remove',
  input: z.strictObject({ hold: HoldId, reason: Text }),
  may(actor, record, input) {
    must(record.holds, input.hold)
    return managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const hold = must(record.holds, input.hold)
    const wrong = notOpen(hold)
    if (wrong !== null) return refusal(wrong)
    const stage = must(record.stages, hold.stage)
    const again = notIn(stage, 'planned', 'in work', 'paused', 'ended', 'signed off')
    if (again !== null) return refusal(again)
    const begun = startedFollowers(record, stage)
    if (begun.length > 0) return refusal(...begun)
    return changes({ ...hold, removedAt: ctx.happenedAt, remark: input.reason })
  },
})
