import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { PartId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** A part is no longer needed, for a reason; its stages no longer wait for it. Its history stays. */
export const partWithdraw = defineCommand({
  name: 'part.withdraw',
  input: z.strictObject({ part: PartId, reason: Text }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.parts, input.part).party) || managesLead(actor, record),
  decide(record, input, ctx) {
    const part = must(record.parts, input.part)
    if (part.withdrawnAt !== null)
      return refusal({ ...wrongState(part.id, 'withdrawn', 'needed'), since: part.withdrawnAt })
    return changes({ ...part, withdrawnAt: ctx.happenedAt, remark: input.reason })
  },
})
