import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { plain } from '../record/condition.ts'
import { MembershipRole } from '../record/entities/people.ts'
import { PersonId } from '../record/ids.ts'
import { all } from '../record/table.ts'
import { managesShop } from './manages-shop.ts'

/** Takes a person into the shop, as manager or hand. Refuses who is in it already. */
export const membershipAdd = defineShopCommand({
  name: 'membership.add',
  input: z.strictObject({ person: PersonId, role: MembershipRole }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input, ctx) {
    const same = all(book.memberships).find(
      (other) => other.person === input.person && other.removedAt === null,
    )
    if (same !== undefined)
      return refusal({
        ...plain(same.id),
        rule: 'exists',
        field: 'person',
        since: same.since,
        clearedWith: { command: 'membership.change', input: { membership: same.id } },
      })
    return changes({
      kind: 'membership',
      id: ctx.newId('mbr'),
      shop: book.id,
      person: input.person,
      role: input.role,
      since: ctx.happenedAt,
      removedAt: null,
    })
  },
})
