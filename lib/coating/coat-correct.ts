import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { type Coat, CoatKind } from '../record/entities/coating.ts'
import { CoatId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { coatAmiss } from './coat-amiss.ts'
import { coatFields } from './coat-fields.ts'

const or = <T>(given: T | undefined, kept: T): T => (given === undefined ? kept : given)

/** Corrects what was recorded of a coat, with a reason. What stood first stays in the journal. */
export const coatCorrect = defineCommand({
  name: 'coat.correct',
  input: z.strictObject({
    coat: CoatId,
    product: z.optional(CoatKind),
    ...coatFields,
    reason: Text,
  }),
  may: (actor, record, input) => actsFor(actor, must(record.coats, input.coat).party),
  decide(record, input, ctx) {
    const coat = must(record.coats, input.coat)
    if (coat.offAt !== null) return refusal(wrongState(coat.id, 'taken off', 'on the assembly'))
    const corrected: Coat = {
      ...coat,
      product: or(input.product, coat.product),
      name: or(input.name, coat.name),
      batch: or(input.batch, coat.batch),
      ratio: or(input.ratio, coat.ratio),
      thinner: or(input.thinner, coat.thinner),
      coats: or(input.coats, coat.coats),
      endedAt: or(input.endedAt, coat.endedAt),
      keyedWith: or(input.keyedWith, coat.keyedWith),
      keyedAt: or(input.keyedAt, coat.keyedAt),
      colour: or(input.colour, coat.colour),
      air: or(input.air, coat.air),
      remark: or(input.remark, coat.remark),
    }
    const amiss = coatAmiss(record, corrected, ctx.now)
    return amiss.length > 0 ? refusal(...amiss) : changes(corrected)
  },
})
