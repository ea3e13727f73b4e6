import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import type { Colour } from '../record/entities/coating.ts'
import { ColourId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { colourFields, tintersOf } from './colour-fields.ts'
import { formulaOf } from './formula.ts'

const or = <T>(given: T | undefined, kept: T): T => (given === undefined ? kept : given)

/**
 * Describes a colour anew; tinters that are given replace the formula, of which the first stays in the record. Where variant or formula change, the
 * sprayed-out card was agreed for another colour: it is agreed anew.
 */
export const colourDescribe = defineCommand({
  name: 'colour.describe',
  input: z.strictObject({ colour: ColourId, name: z.optional(Line), ...colourFields }),
  may: (actor, record, input) => actsFor(actor, must(record.colours, input.colour).party),
  decide(record, input, ctx) {
    const colour = must(record.colours, input.colour)
    if (colour.removedAt !== null) return refusal(wrongState(colour.id, 'removed', 'on the list'))
    const told: Colour = {
      ...colour,
      name: or(input.name, colour.name),
      code: or(input.code, colour.code),
      variant: or(input.variant, colour.variant),
      batch: or(input.batch, colour.batch),
      gun: or(input.gun, colour.gun),
      keepsake: or(input.keepsake, colour.keepsake),
    }
    const old = input.tinters === undefined ? [] : formulaOf(record, colour.id)
    const given = tintersOf(ctx.newId, record.id, colour.id, input.tinters ?? [])
    const reweighed =
      input.tinters !== undefined &&
      (old.length !== given.length ||
        old.some((was, i) => was.name !== given[i]?.name || was.grams !== given[i]?.grams))
    const another = reweighed || told.variant !== colour.variant
    return changes(
      another ? { ...told, cardAt: null, cardBy: null } : told,
      ...old.map((tinter) => ({ ...tinter, removedAt: ctx.happenedAt })),
      ...given,
    )
  },
})
