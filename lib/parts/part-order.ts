import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartId, PartyId } from '../record/ids.ts'
import { CivilDate } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { newPromise } from './new-promise.ts'
import { partStateConditions } from './part-state.ts'

const Price = z.int().check(z.minimum(0), z.maximum(100_000_000_000)).brand<'Minor'>()

/**
 * Notes that a part was ordered, where, for how much, and for which day it was promised. A hand, who sees no money, orders
 * without a price. What was rejected is ordered again.
 */
export const partOrder = defineCommand({
  name: 'part.order',
  input: z.strictObject({
    part: PartId,
    supplier: z.optional(PartyId),
    /** Before tax, in minor units. */
    price: z.optional(Price),
    promised: z.optional(CivilDate),
    told: z.optional(PartyId),
  }),
  may(actor, record, input) {
    const { party } = must(record.parts, input.part)
    if (!actsForOrTold(actor, record, party, input.told)) return false
    return input.price === undefined || (actor.role !== 'hand' && actor.party === party)
  },
  decide(record, input, ctx) {
    const part = must(record.parts, input.part)
    const unmet = partStateConditions(part, 'wanted', 'rejected')
    if (unmet.length > 0) return refusal(...unmet)
    const supplier =
      input.supplier === undefined ? part.supplier : must(record.parties, input.supplier).id
    const ordered = {
      ...part,
      state: 'ordered' as const,
      supplier,
      price: input.price ?? part.price,
      orderedAt: ctx.happenedAt,
    }
    return changes(
      ordered,
      ...(input.promised === undefined
        ? []
        : [newPromise(ordered, input.promised, supplier ?? part.party, '', ctx)]),
      ...toldBy(ctx, 'part.order', part.id, input.told, record.id),
    )
  },
})
