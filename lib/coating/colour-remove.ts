import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ColourId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'

/** Takes a colour off the list, with a reason; not one that lies on something. It stays in the record. */
export const colourRemove = defineCommand({
  name: 'colour.remove',
  input: z.strictObject({ colour: ColourId, reason: Text }),
  may: (actor, record, input) => actsFor(actor, must(record.colours, input.colour).party),
  decide(record, input, ctx) {
    const colour = must(record.colours, input.colour)
    if (colour.removedAt !== null) return refusal(wrongState(colour.id, 'removed', 'on the list'))
    const lies = all(record.coats).some((coat) => coat.colour === colour.id && coat.offAt === null)
    if (lies) return refusal(wrongState(colour.id, 'on the car', 'on nothing'))
    return changes({ ...colour, removedAt: ctx.happenedAt })
  },
})
