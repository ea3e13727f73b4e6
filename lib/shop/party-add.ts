import * as z from 'zod/mini'
import { managesLead, ownerOf } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongInput } from '../record/condition.ts'
import { Party, PartyRole } from '../record/entities/people.ts'
import { ShopId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { bookOf } from './diary.ts'
import { partyNameConditions, partyShopConditions } from './party-name.ts'

const Input = z.strictObject({
  name: Line,
  role: PartyRole,
  /** A shop of this installation; a shop without one is entered for by the lead, as told by telephone. */
  shop: z.optional(ShopId),
  /** Who pays it; the owner unless said otherwise. It stays so: whoever paid has seen its prices. */
  bills: z.optional(Party.shape.bills),
})

function conditions(record: ProjectRecord, input: z.infer<typeof Input>): Condition[] {
  const owner = input.role === 'owner' ? ownerOf(record) : undefined
  return [
    ...partyNameConditions(record, input.name, null),
    ...(owner === undefined
      ? []
      : [{ ...plain(owner.id), rule: 'exists', field: 'role' } as const]),
    ...(input.shop === undefined ? [] : partyShopConditions(record, input.shop, null)),
    ...(input.shop !== undefined && input.role !== 'shop'
      ? [wrongInput(record.id, 'shop', 'only for a shop')]
      : []),
    ...(input.bills === 'lead' && input.role !== 'shop'
      ? [wrongInput(record.id, 'bills', 'only for a shop')]
      : []),
  ]
}

/** Adds who takes part. Refuses a second owner, a name or a shop that takes part already. */
export const partyAdd = defineCommand({
  name: 'party.add',
  input: Input,
  shops: (_record, input) => (input.shop === undefined ? [] : [input.shop]),
  may: (actor, record) => managesLead(actor, record),
  decide(record, input, ctx) {
    const unmet = conditions(record, input)
    if (unmet.length > 0) return refusal(...unmet)
    const shop =
      input.shop === undefined ? null : must(bookOf(ctx, input.shop).shops, input.shop).id
    return changes({
      kind: 'party',
      id: ctx.newId('pty'),
      project: record.id,
      name: input.name,
      role: input.role,
      lead: false,
      shop,
      bills: input.bills ?? 'owner',
      leftAt: null,
    })
  },
})
