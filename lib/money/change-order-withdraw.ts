import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ChangeOrderId } from '../record/ids.ts'
import { OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** Takes back a change order that nobody has answered yet; `text` says why. */
export const changeOrderWithdraw = defineCommand({
  name: 'changeOrder.withdraw',
  input: z.strictObject({ changeOrder: ChangeOrderId, text: z.optional(OptionalText) }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.changeOrders, input.changeOrder).party),
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    if (order.state !== 'draft' && order.state !== 'sent')
      return refusal(wrongState(order.id, order.state, 'draft', 'sent'))
    return changes({
      ...order,
      state: 'withdrawn',
      answeredAt: ctx.happenedAt,
      answeredBy: ctx.actor.person,
      answer: input.text ?? null,
    })
  },
})
