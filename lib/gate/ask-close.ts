import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { AskId } from '../record/ids.ts'
import { must } from '../record/table.ts'

/** Closes an ask: whoever asked takes it back, or whoever was asked has dealt with it. */
export const askClose = defineCommand({
  name: 'ask.close',
  input: z.strictObject({ ask: AskId }),
  may(actor, record, input) {
    const ask = must(record.asks, input.ask)
    return actsFor(actor, ask.from) || actsFor(actor, ask.to)
  },
  decide(record, input, ctx) {
    const ask = must(record.asks, input.ask)
    if (ask.closedAt !== null)
      return refusal({ ...wrongState(ask.id, 'closed', 'open'), since: ask.closedAt })
    return changes({ ...ask, closedAt: ctx.happenedAt })
  },
})
