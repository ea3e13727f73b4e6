import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { BayId } from '../record/ids.ts'
import { Line } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { bayNameConditions } from './bay-name.ts'
import { managesShop } from './manages-shop.ts'

/** Renames a bay or says what it is now. */
export const bayDescribe = defineShopCommand({
  name: 'bay.describe',
  input: z.strictObject({ bay: BayId, name: z.optional(Line), type: z.optional(Line) }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input) {
    const bay = must(book.bays, input.bay)
    if (bay.retiredAt !== null) return refusal(wrongState(bay.id, 'retired', 'in use'))
    const name = input.name ?? bay.name
    const same = bayNameConditions(book, name, bay.id)
    if (same.length > 0) return refusal(...same)
    return changes({ ...bay, name, type: input.type ?? bay.type })
  },
})
