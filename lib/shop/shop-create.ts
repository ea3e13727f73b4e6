import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { plain } from '../record/condition.ts'
import { Shop } from '../record/entities/people.ts'
import { Currency, Line, TaxRate, TimeZone } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { shopConditions } from './shop-describe.ts'

/**
 * Opens a shop and its book; who opens it is its first manager. Its id is the first that derives from the command's key.
 * The door decides who may open one: nobody has a role in a shop that isn't there.
 */
export const shopCreate = defineShopCommand({
  name: 'shop.create',
  input: z.strictObject({
    name: Line,
    currency: Currency,
    timeZone: TimeZone,
    taxRegistered: z.boolean(),
    /** 0 where it is not registered; only a suggestion for new lines. */
    taxRate: z.optional(TaxRate),
    opensAt: z.optional(Shop.shape.opensAt),
    closesAt: z.optional(Shop.shape.closesAt),
    demo: z.optional(z.boolean()),
  }),
  may: (actor) => actor.role === 'manager' && actor.shop === null && actor.party === null,
  decide(book, input, ctx) {
    const id = ctx.newId('shp')
    const existing = all(book.shops)[0]
    if (existing !== undefined)
      return refusal({ ...plain(existing.id), rule: 'exists', field: 'shop' })
    const shop: Shop = {
      kind: 'shop',
      id,
      name: input.name,
      currency: input.currency,
      timeZone: input.timeZone,
      taxRegistered: input.taxRegistered,
      taxRate: input.taxRate ?? TaxRate.parse(0),
      opensAt: input.opensAt ?? '08:00',
      closesAt: input.closesAt ?? '18:00',
      demo: input.demo ?? false,
      createdAt: ctx.happenedAt,
    }
    const unmet = shopConditions(shop)
    if (unmet.length > 0) return refusal(...unmet)
    return changes(shop, {
      kind: 'membership',
      id: ctx.newId('mbr'),
      shop: id,
      person: ctx.actor.person,
      role: 'manager',
      since: ctx.happenedAt,
      removedAt: null,
    })
  },
})
