import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { MembershipRole } from '../record/entities/people.ts'
import { MembershipId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { lastManagerConditions } from './last-manager.ts'
import { managesShop } from './manages-shop.ts'

/** Changes a person's role in the shop. Refuses to leave it without a manager. */
export const membershipChange = defineShopCommand({
  name: 'membership.change',
  input: z.strictObject({ membership: MembershipId, role: MembershipRole }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input) {
    const membership = must(book.memberships, input.membership)
    if (membership.removedAt !== null)
      return refusal(wrongState(membership.id, 'removed', 'in the shop'))
    const unmet = input.role === 'manager' ? [] : lastManagerConditions(book, membership)
    return unmet.length > 0 ? refusal(...unmet) : changes({ ...membership, role: input.role })
  },
})
