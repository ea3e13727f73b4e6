import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { plain, wrongInput, wrongState } from '../record/condition.ts'
import { PartyId, PersonId } from '../record/ids.ts'
import { allOrHidden, must } from '../record/table.ts'

/**
 * Lets a person act for a party that has no shop here: the owner, a supplier, an observer. A shop's people come by its
 * shop book. Refuses a person who takes part already (one person acts for one party), and a second person for the owner by
 * anybody else: whoever acts for the owner can say yes to the lead's own prices.
 */
export const participantAdd = defineCommand({
  name: 'participant.add',
  input: z.strictObject({ party: PartyId, person: PersonId }),
  may: (actor, record, input) => managesLead(actor, record) || managesFor(actor, input.party),
  decide(record, input, ctx) {
    const party = must(record.parties, input.party)
    if (party.leftAt !== null) return refusal(wrongState(party.id, 'left', 'in the project'))
    if (party.role === 'shop')
      return refusal(wrongInput(party.id, 'party', 'people of a shop come by its shop book'))
    // Who leads can't also give the owner's yes.
    if (input.person === ctx.actor.person)
      return refusal(wrongInput(party.id, 'person', 'somebody else than yourself'))
    const acting = allOrHidden(record.participants).filter(({ removedAt }) => removedAt === null)
    const same = acting.find((other) => other.person === input.person)
    if (same !== undefined) return refusal({ ...plain(same.id), rule: 'exists', field: 'person' })
    const owned = party.role === 'owner' && acting.some((other) => other.party === party.id)
    if (owned && ctx.actor.party !== party.id)
      return refusal({
        ...wrongInput(party.id, 'party', 'the owner lets further people in'),
        clearedBy: [party.id],
        clearedWith: { command: 'participant.add', input: { party: party.id } },
      })
    return changes({
      kind: 'participant',
      id: ctx.newId('ptc'),
      project: record.id,
      party: party.id,
      person: input.person,
      since: ctx.happenedAt,
      removedAt: null,
    })
  },
})
