import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput, wrongState } from '../record/condition.ts'
import type { Party } from '../record/entities/people.ts'
import { PartyId, ShopId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { bookOf } from './diary.ts'
import { partyNameConditions, partyShopConditions } from './party-name.ts'

function shopConditions(
  record: ProjectRecord,
  party: Party,
  shop: ShopId | undefined,
): Condition[] {
  if (shop === undefined || shop === party.shop) return []
  if (party.role !== 'shop') return [wrongInput(party.id, 'shop', 'only for a shop')]
  if (party.shop !== null) return [wrongInput(party.id, 'shop', 'it has its shop already')]
  return partyShopConditions(record, shop, party.id)
}

/** Renames a party (the lead, or the party itself), or links one that was entered for by telephone to its shop (the lead). */
export const partyDescribe = defineCommand({
  name: 'party.describe',
  input: z.strictObject({ party: PartyId, name: z.optional(Line), shop: z.optional(ShopId) }),
  shops: (_record, input) => (input.shop === undefined ? [] : [input.shop]),
  may: (actor, record, input) =>
    managesLead(actor, record) || (input.shop === undefined && managesFor(actor, input.party)),
  decide(record, input, ctx) {
    const party = must(record.parties, input.party)
    if (party.leftAt !== null) return refusal(wrongState(party.id, 'left', 'in the project'))
    const name = input.name ?? party.name
    const unmet = [
      ...partyNameConditions(record, name, party.id),
      ...shopConditions(record, party, input.shop),
    ]
    if (unmet.length > 0) return refusal(...unmet)
    const shop =
      input.shop === undefined ? party.shop : must(bookOf(ctx, input.shop).shops, input.shop).id
    return changes({ ...party, name, shop })
  },
})
