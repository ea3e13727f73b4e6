import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { type Condition, wrongInput } from '../record/condition.ts'
import { Shop } from '../record/entities/people.ts'
import { Line, TaxRate, TimeZone } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { managesShop } from './manages-shop.ts'

/** The condition that a shop closes before it opens, and that one charges tax without being registered for it. */
export function shopConditions(shop: Shop): Condition[] {
  return [
    ...(shop.opensAt < shop.closesAt
      ? []
      : [wrongInput(shop.id, 'closesAt', 'later than it opens')]),
    ...(shop.taxRegistered || shop.taxRate === 0
      ? []
      : [wrongInput(shop.id, 'taxRate', 'none where the shop is not registered for tax')]),
  ]
}

/** Changes what a shop says of itself; what is left out stays. Lines written before keep their tax rate. */
export const shopDescribe = defineShopCommand({
  name: 'shop.describe',
  input: z.strictObject({
    name: z.optional(Line),
    timeZone: z.optional(TimeZone),
    taxRegistered: z.optional(z.boolean()),
    taxRate: z.optional(TaxRate),
    opensAt: z.optional(Shop.shape.opensAt),
    closesAt: z.optional(Shop.shape.closesAt),
  }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input) {
    const shop = must(book.shops, book.id)
    const described: Shop = {
      ...shop,
      name: input.name ?? shop.name,
      timeZone: input.timeZone ?? shop.timeZone,
      taxRegistered: input.taxRegistered ?? shop.taxRegistered,
      taxRate: input.taxRate ?? shop.taxRate,
      opensAt: input.opensAt ?? shop.opensAt,
      closesAt: input.closesAt ?? shop.closesAt,
    }
    const unmet = shopConditions(described)
    return unmet.length > 0 ? refusal(...unmet) : changes(described)
  },
})
