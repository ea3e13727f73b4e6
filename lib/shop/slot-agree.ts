import * as z from 'zod/mini'
import { leadOf, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { SlotId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { bayOf, bookOf } from './diary.ts'
import { slotTaken } from './slot-taken.ts'

/** The lead agrees to an asked slot. Refuses when the bay or the assembly has been given to another meanwhile. */
export const slotAgree = defineCommand({
  name: 'slot.agree',
  input: z.strictObject({ slot: SlotId }),
  shops: (record, input) => [must(record.slots, input.slot).shop],
  may: (actor, record) => managesLead(actor, record),
  decide(record, input, ctx) {
    const slot = must(record.slots, input.slot)
    if (slot.state !== 'asked') return refusal(wrongState(slot.id, slot.state, 'asked'))
    const bay = bayOf(ctx, slot.shop, slot.bay)
    if (bay.retiredAt !== null) return refusal(wrongState(bay.id, 'retired', 'in use'))
    const taken = slotTaken(record, bookOf(ctx, slot.shop), { ...slot, slot: slot.id })
    if (taken.length > 0) return refusal(...taken)
    const agreedBy = leadOf(record)?.id ?? null
    return changes({ ...slot, state: 'agreed', agreedAt: ctx.happenedAt, agreedBy })
  },
})
