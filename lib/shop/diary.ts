import type { Context } from '../record/command.ts'
import type { Bay } from '../record/entities/people.ts'
import type { BayId, ShopId } from '../record/ids.ts'
import type { ShopRecord } from '../record/project-record.ts'
import { Hidden, must } from '../record/table.ts'

/** The book of a shop. @throws {Hidden} where this device doesn't hold it: then the answer is *unknown*. */
export function bookOf(ctx: Context, shop: ShopId): ShopRecord {
  const book = ctx.shops.get(shop)
  if (book === undefined) throw new Hidden(shop)
  return book
}

/** A bay of that shop. @throws {NoSuchEntity} @throws {Hidden} */
export const bayOf = (ctx: Context, shop: ShopId, bay: BayId): Bay =>
  must(bookOf(ctx, shop).bays, bay)
