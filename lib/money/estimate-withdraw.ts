import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { EstimateLineId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { estimateConditions } from './estimate-add.ts'

/** Takes a line out of the first price; it stays visible. Refused after the party's first approved change. */
export const estimateWithdraw = defineCommand({
  name: 'estimate.withdraw',
  input: z.strictObject({ estimateLine: EstimateLineId }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.estimateLines, input.estimateLine).party),
  decide(record, input, ctx) {
    const line = must(record.estimateLines, input.estimateLine)
    if (line.withdrawnAt !== null) return refusal(wrongState(line.id, 'withdrawn', 'in force'))
    const unmet = estimateConditions(record, line.party)
    if (unmet.length > 0) return refusal(...unmet)
    return changes({ ...line, withdrawnAt: ctx.happenedAt })
  },
})
