import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain, wrongInput } from '../record/condition.ts'
import type { Colour } from '../record/entities/coating.ts'
import { Line } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { colourFields, tintersOf } from './colour-fields.ts'

/** Keeps a colour of the car as it was mixed: code, variant, batch, tinters by weight, gun set-up, keepsake tin. Refuses a name that is there already. */
export const colourAdd = defineCommand({
  name: 'colour.add',
  input: z.strictObject({ name: Line, ...colourFields }),
  may: (actor, record) =>
    all(record.parties).some(({ id, role }) => role === 'shop' && actsFor(actor, id)),
  decide(record, input, ctx) {
    const { party, person } = ctx.actor
    if (party === null) return refusal(wrongInput(record.id, 'party', 'a party of this project'))
    const same = all(record.colours).find(
      ({ name, removedAt }) => removedAt === null && name === input.name,
    )
    if (same !== undefined)
      return refusal({ ...plain(same.id), rule: 'exists', field: 'name', since: same.at })
    const colour: Colour = {
      kind: 'colour',
      id: ctx.newId('clr'),
      project: record.id,
      party,
      name: input.name,
      code: input.code ?? null,
      variant: input.variant ?? null,
      batch: input.batch ?? null,
      cardAt: null,
      cardBy: null,
      gun: input.gun ?? null,
      keepsake: input.keepsake ?? null,
      at: ctx.happenedAt,
      by: person,
      removedAt: null,
    }
    return changes(colour, ...tintersOf(ctx.newId, record.id, colour.id, input.tinters ?? []))
  },
})
