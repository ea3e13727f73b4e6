import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ChangeOrderId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { payerOf } from './approval.ts'
import { changeOrderNote } from './change-order-words.ts'

/** Asks about a change order before it is answered: who pays it, or the lead. */
export const changeOrderAsk = defineCommand({
  name: 'changeOrder.ask',
  input: z.strictObject({ changeOrder: ChangeOrderId, text: Text }),
  may(actor, record, input) {
    const { party } = must(record.changeOrders, input.changeOrder)
    const payer = payerOf(record, must(record.parties, party))
    if (actor.party === party) return false
    return (payer !== undefined && managesFor(actor, payer.id)) || managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    const party = ctx.actor.party
    if (order.state !== 'sent' || party === null)
      return refusal(wrongState(order.id, order.state, 'sent'))
    return changes(changeOrderNote(order, 'question', party, input.text, ctx))
  },
})
