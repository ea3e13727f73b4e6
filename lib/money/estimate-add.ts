import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import { EstimateLine } from '../record/entities/money.ts'
import { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Line, TaxRate } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { Price } from './price.ts'
import { changeOrdersOf } from './totals.ts'

/**
 * Why a party's estimate may no longer move: once a change to it was approved, the figures of that yes stand on it, and more
 * or less is a change order.
 */
export function estimateConditions(record: ProjectRecord, party: PartyId): Condition[] {
  const approved = changeOrdersOf(record, party).find((order) => order.state === 'approved')
  if (approved === undefined) return []
  return [
    {
      ...wrongState(approved.id, 'approved', 'draft', 'sent', 'declined', 'withdrawn'),
      since: approved.answeredAt,
      clearedBy: [party],
      clearedWith: { command: 'changeOrder.raise', input: { party } },
    },
  ]
}

/** Adds lines to a party's first price; each says whether it is fixed or an allowance. Refused after its first approved change. */
export const estimateAdd = defineCommand({
  name: 'estimate.add',
  input: z.strictObject({
    party: PartyId,
    lines: z
      .array(
        z.strictObject({
          text: Line,
          type: EstimateLine.shape.type,
          net: Price,
          taxRate: TaxRate,
        }),
      )
      .check(z.minLength(1), z.maxLength(500)),
  }),
  may: (actor, record, input) =>
    managesFor(actor, input.party) && must(record.parties, input.party).role === 'shop',
  decide(record, input, ctx) {
    const unmet = estimateConditions(record, input.party)
    if (unmet.length > 0) return refusal(...unmet)
    const positions = all(record.estimateLines)
      .filter((line) => line.party === input.party)
      .map((line) => line.position)
    const last = Math.max(0, ...positions)
    return changes(
      ...input.lines.map(
        (line, index): EstimateLine => ({
          kind: 'estimateLine',
          id: ctx.newId('esl'),
          project: record.id,
          party: input.party,
          position: last + index + 1,
          ...line,
          withdrawnAt: null,
        }),
      ),
    )
  },
})
