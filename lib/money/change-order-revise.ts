import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ChangeOrder } from '../record/entities/money.ts'
import { ChangeOrderId } from '../record/ids.ts'
import { Line, OptionalText, Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { changeLines, Days, MOST_LINES, mistakeConditions } from './change-order-raise.ts'
import { ChangeLineInput } from './price.ts'
import { linesOf } from './totals.ts'

/** Changes a draft: what is left out stays; `lines` replace all lines. What was sent is withdrawn and raised anew. */
export const changeOrderRevise = defineCommand({
  name: 'changeOrder.revise',
  input: z.strictObject({
    changeOrder: ChangeOrderId,
    title: z.optional(Line),
    text: z.optional(OptionalText),
    reason: z.optional(ChangeOrder.shape.reason),
    bears: z.optional(ChangeOrder.shape.bears),
    days: z.optional(z.nullable(Days)),
    lines: z.optional(z.array(ChangeLineInput).check(z.maxLength(MOST_LINES))),
    files: z.optional(z.array(Sha256)),
  }),
  files: (input) => input.files ?? [],
  may: (actor, record, input) =>
    managesFor(actor, must(record.changeOrders, input.changeOrder).party),
  decide(record, input, ctx) {
    const order = must(record.changeOrders, input.changeOrder)
    if (order.state !== 'draft') {
      const sent = order.state === 'sent'
      const withdraw = {
        clearedBy: [order.party],
        clearedWith: {
          command: 'changeOrder.withdraw',
          input: { changeOrder: order.id },
        },
      } as const
      return refusal({ ...wrongState(order.id, order.state, 'draft'), ...(sent && withdraw) })
    }
    const revised: ChangeOrder = {
      ...order,
      title: input.title ?? order.title,
      text: input.text ?? order.text,
      reason: input.reason ?? order.reason,
      bears: input.bears ?? order.bears,
      days: input.days === undefined ? order.days : input.days,
      files: input.files ?? order.files,
    }
    const mistake = mistakeConditions(revised)
    if (mistake.length > 0) return refusal(...mistake)
    if (input.lines === undefined) return changes(revised)
    const struck = linesOf(record, order.id).map((line) => ({
      ...line,
      removedAt: ctx.happenedAt,
    }))
    return changes(revised, ...struck, ...changeLines(revised, input.lines, () => ctx.newId('chl')))
  },
})
