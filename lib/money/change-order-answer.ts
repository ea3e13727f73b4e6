import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ChangeOrderId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { changeOrderNote } from './change-order-words.ts'

/** The raising party answers what was asked, also after the yes or no. */
export const changeOrderAnswer = defineCommand({
  name: 'changeOrder.answer',
  input: z.strictObject({ changeOrder: ChangeOrderId, text: Text }),
  may: (actor, record, input) => actsFor(actor, must(record.changeOrders, input.changeOrder).party),
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    if (order.state === 'draft' || order.state === 'withdrawn')
      return refusal(wrongState(order.id, order.state, 'sent', 'approved', 'declined'))
    return changes(changeOrderNote(order, 'answer', order.party, input.text, ctx))
  },
})
