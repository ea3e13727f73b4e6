import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { MembershipId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { lastManagerConditions } from './last-manager.ts'
import { managesShop } from './manages-shop.ts'

/** Ends a person's part in the shop. Refuses to leave it without a manager. */
export const membershipRemove = defineShopCommand({
  name: 'membership.remove',
  input: z.strictObject({ membership: MembershipId }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input, ctx) {
    const membership = must(book.memberships, input.membership)
    if (membership.removedAt !== null)
      return refusal(wrongState(membership.id, 'removed', 'in the shop'))
    const unmet = lastManagerConditions(book, membership)
    return unmet.length > 0
      ? refusal(...unmet)
      : changes({ ...membership, removedAt: ctx.happenedAt })
  },
})
