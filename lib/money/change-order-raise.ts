import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput, wrongState } from '../record/condition.ts'
import { type ChangeLine, ChangeOrder } from '../record/entities/money.ts'
import { PartyId } from '../record/ids.ts'
import { Line, OptionalText, Sha256 } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { ChangeLineInput } from './price.ts'

/** Most lines on one change order. */
export const MOST_LINES = 200
/** Working days that a change may add or save. */
export const Days = z.int().check(z.minimum(-1_000), z.maximum(1_000))

/** The condition that a shop's own mistake is billed to who pays it. */
export const mistakeConditions = (
  order: Pick<ChangeOrder, 'id' | 'reason' | 'bears'>,
): Condition[] =>
  order.reason === 'mistake' && order.bears === 'owner'
    ? [wrongInput(order.id, 'bears', 'a mistake is not billed to the owner')]
    : []

/** The lines of a change order from what was typed, each with an id of its own. */
export const changeLines = (
  order: ChangeOrder,
  typed: readonly ChangeLineInput[],
  newId: () => ChangeLine['id'],
): ChangeLine[] =>
  typed.map((line, index) => ({
    kind: 'changeLine',
    id: newId(),
    project: order.project,
    changeOrder: order.id,
    party: order.party,
    position: index + 1,
    text: line.text,
    quantity: line.quantity ?? null,
    unit: line.unit ?? null,
    unitPrice: line.unitPrice ?? null,
    net: line.net,
    taxRate: line.taxRate,
    sentAt: null,
    removedAt: null,
  }))

/** Raises a change order as a draft, with its lines. Refuses a mistake of the shop's that would be billed. */
export const changeOrderRaise = defineCommand({
  name: 'changeOrder.raise',
  input: z.strictObject({
    party: PartyId,
    title: Line,
    text: z.optional(OptionalText),
    reason: ChangeOrder.shape.reason,
    bears: ChangeOrder.shape.bears,
    days: z.optional(Days),
    lines: z.array(ChangeLineInput).check(z.maxLength(MOST_LINES)),
    files: z.optional(z.array(Sha256)),
  }),
  files: (input) => input.files ?? [],
  may: (actor, record, input) =>
    managesFor(actor, input.party) && must(record.parties, input.party).role === 'shop',
  decide(record, input, ctx) {
    const party = must(record.parties, input.party)
    if (party.leftAt !== null) return refusal(wrongState(party.id, 'left', 'in the project'))
    const order: ChangeOrder = {
      kind: 'changeOrder',
      id: ctx.newId('cho'),
      project: record.id,
      // Hidden ones count too, so that each view makes the same number; none is ever deleted.
      number: record.changeOrders.rows.size + record.changeOrders.hidden.size + 1,
      title: input.title,
      text: input.text ?? '',
      reason: input.reason,
      party: party.id,
      bears: input.bears,
      state: 'draft',
      days: input.days ?? null,
      files: input.files ?? [],
      raisedAt: ctx.happenedAt,
      raisedBy: ctx.actor.person,
      sentAt: null,
      answeredAt: null,
      answeredBy: null,
      proof: null,
      shown: null,
      shownHash: null,
      answer: null,
    }
    const mistake = mistakeConditions(order)
    if (mistake.length > 0) return refusal(...mistake)
    return changes(order, ...changeLines(order, input.lines, () => ctx.newId('chl')))
  },
})
