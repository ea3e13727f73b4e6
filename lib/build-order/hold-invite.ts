import * as z from 'zod/mini'
import { actsFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongInput } from '../record/condition.ts'
import { HoldId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { notOpen } from './hold-state.ts'

/**
 * Invites the party of a hold or witness point to a visit; again, where the visit is put off.
 * Refuses a visit that is already past: nobody could come to it.
 */
export const holdInvite = defineCommand({
  name: 'hold.invite',
  input: z.strictObject({ hold: HoldId, visitAt: Instant }),
  may(actor, record, input) {
    const stage = must(record.stages, must(record.holds, input.hold).stage)
    return actsFor(actor, stage.party) || managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const hold = must(record.holds, input.hold)
    const over = notOpen(hold)
    if (over !== null) return refusal(over)
    if (input.visitAt <= ctx.now) return refusal(wrongInput(hold.id, 'visitAt', 'a time to come'))
    return changes({
      ...hold,
      state: 'invited',
      invitedAt: ctx.happenedAt,
      visitAt: input.visitAt,
    })
  },
})
