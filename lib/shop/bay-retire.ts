import * as z from 'zod/mini'
import { changes, defineShopCommand, refusal } from '../record/command.ts'
import { type Condition, plain, wrongState } from '../record/condition.ts'
import type { Slot } from '../record/entities/things.ts'
import { BayId } from '../record/ids.ts'
import { all, must } from '../record/table.ts'
import { managesShop } from './manages-shop.ts'

const stillTaken = (slot: Slot): Condition => ({
  ...plain(slot.id),
  rule: 'slot-taken',
  what: 'bay',
  bay: slot.bay,
  from: slot.from,
  to: slot.to,
  by: slot.party,
  since: slot.agreedAt,
  clearedBy: [slot.party],
  clearedWith: { command: 'slot.release', input: { slot: slot.id } },
})

/** Takes a bay out of use. Refuses while it has agreed slots that are not over. */
export const bayRetire = defineShopCommand({
  name: 'bay.retire',
  input: z.strictObject({ bay: BayId }),
  may: (actor, book) => managesShop(actor, book),
  decide(book, input, ctx) {
    const bay = must(book.bays, input.bay)
    if (bay.retiredAt !== null) return refusal(wrongState(bay.id, 'retired', 'in use'))
    const taken = all(book.slots).filter(
      (slot) => slot.bay === bay.id && slot.state === 'agreed' && slot.to > ctx.now,
    )
    if (taken.length > 0) return refusal(...taken.map(stillTaken))
    return changes({ ...bay, retiredAt: ctx.happenedAt })
  },
})
