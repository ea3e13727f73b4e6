import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ChangeOrderId } from '../record/ids.ts'
import { OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { answeredAt } from './answered-at.ts'
import { payerOf } from './approval.ts'

/** Says no to a change order. It binds nobody to pay, so it asks for no fresh proof. */
export const changeOrderDecline = defineCommand({
  name: 'changeOrder.decline',
  input: z.strictObject({ changeOrder: ChangeOrderId, text: z.optional(OptionalText) }),
  may(actor, record, input) {
    const order = must(record.changeOrders, input.changeOrder)
    const payer = payerOf(record, must(record.parties, order.party))
    return payer !== undefined && managesFor(actor, payer.id)
  },
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    if (order.state !== 'sent') return refusal(wrongState(order.id, order.state, 'sent'))
    return changes({
      ...order,
      state: 'declined',
      answeredAt: answeredAt(order, ctx.happenedAt),
      answeredBy: ctx.actor.person,
      answer: input.text ?? null,
    })
  },
})
