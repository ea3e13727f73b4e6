import type { Actor } from '../record/actor.ts'
import type { ShopRecord } from '../record/project-record.ts'

/** Manages the shop whose book this is. */
export const managesShop = (actor: Actor, book: ShopRecord): boolean =>
  actor.shop === book.id && actor.role === 'manager'
