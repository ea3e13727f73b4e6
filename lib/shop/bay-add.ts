import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { Line } from '../record/scalars.ts'
import { bayNameConditions } from './bay-name.ts'
import { managesShop } from './manages-shop.ts'

/** Adds a bay to a shop. Refuses a name that another of its bays has. */
export const bayAdd = defineShopCommand({
  name: 'bay.add',
  input: z.strictObject({ name: Line, type: Line }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input, ctx) {
    const same = bayNameConditions(book, input.name, null)
    if (same.length > 0) return refusal(...same)
    return changes({
      kind: 'bay',
      id: ctx.newId('bay'),
      shop: book.id,
      name: input.name,
      type: input.type,
      retiredAt: null,
    })
  },
})
