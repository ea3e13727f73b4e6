import * as z from 'zod/mini'
import { actsFor, actsForOrTold, managesLead, ownerOf } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ColourId, PartyId } from '../record/ids.ts'
import { must } from '../record/table.ts'

/**
 * The owner agrees to the sprayed-out card of a colour, looked at in daylight; or tells it by phone, and the lead enters it. In a project without an owner
 * the lead does. No shop agrees for the owner.
 */
export const colourCardAgreed = defineCommand({
  name: 'colour.cardAgreed',
  input: z.strictObject({ colour: ColourId, told: z.optional(PartyId) }),
  may(actor, record, input) {
    const owner = ownerOf(record)
    if (owner === undefined) return input.told === undefined && managesLead(actor, record)
    return input.told === undefined
      ? actsFor(actor, owner.id)
      : actsForOrTold(actor, record, owner.id, input.told)
  },
  decide(record, input, ctx) {
    const colour = must(record.colours, input.colour)
    if (colour.removedAt !== null) return refusal(wrongState(colour.id, 'removed', 'on the list'))
    if (colour.cardAt !== null) return refusal(wrongState(colour.id, 'agreed', 'not agreed'))
    return changes(
      {
        ...colour,
        cardAt: ctx.happenedAt,
        cardBy: input.told === undefined ? ctx.actor.person : null,
      },
      ...toldBy(ctx, 'colour.cardAgreed', colour.id, input.told, record.id),
    )
  },
})
