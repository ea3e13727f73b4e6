import * as z from 'zod/mini'
import { leadOf, managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongInput, wrongState } from '../record/condition.ts'
import { ChangeOrderId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { payerOf } from './approval.ts'
import { linesOf } from './totals.ts'

/** Sends a draft to who pays the party. Refuses one without a line, and one that nobody is there to answer. */
export const changeOrderSend = defineCommand({
  name: 'changeOrder.send',
  input: z.strictObject({ changeOrder: ChangeOrderId }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.changeOrders, input.changeOrder).party),
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    if (order.state !== 'draft') return refusal(wrongState(order.id, order.state, 'draft'))
    const lines = linesOf(record, order.id)
    if (lines.length === 0)
      return refusal({
        ...wrongInput(order.id, 'lines', 'at least one line'),
        clearedBy: [order.party],
        clearedWith: { command: 'changeOrder.revise', input: { changeOrder: order.id } },
      })
    const lead = leadOf(record)
    if (payerOf(record, must(record.parties, order.party)) === undefined)
      return refusal({
        ...wrongInput(order.id, 'owner', 'the project has no owner yet'),
        clearedBy: lead === undefined ? [] : [lead.id],
        clearedWith: { command: 'party.add', input: { role: 'owner' } },
      })
    const sentAt = ctx.happenedAt
    return changes(
      { ...order, state: 'sent', sentAt },
      ...lines.map((line) => ({ ...line, sentAt })),
    )
  },
})
