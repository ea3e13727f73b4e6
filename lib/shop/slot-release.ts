import * as z from 'zod/mini'
import { actsFor, managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { SlotId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'

/** Gives a slot back, or refuses one that was asked, with a reason: its claimant, the lead, or the shop whose bay it is. */
export const slotRelease = defineCommand({
  name: 'slot.release',
  input: z.strictObject({ slot: SlotId, reason: Text }),
  shops: (record, input) => [must(record.slots, input.slot).shop],
  may(actor, record, input) {
    const slot = must(record.slots, input.slot)
    const hosts = all(record.parties).filter((party) => party.shop === slot.shop)
    return (
      actsFor(actor, slot.party) ||
      managesLead(actor, record) ||
      hosts.some((party) => managesFor(actor, party.id))
    )
  },
  decide(record, input) {
    const slot = must(record.slots, input.slot)
    if (slot.state === 'released')
      return refusal(wrongState(slot.id, 'released', 'asked', 'agreed'))
    return changes({ ...slot, state: 'released', reason: input.reason })
  },
})
