import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { HoldId } from '../record/ids.ts'
import { OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { clearConditions, cleared, mayClear } from './clear-hold.ts'
import { bookOfHands } from './own-work.ts'

/**
 * Releases a hold or witness point: what follows may go on. The party named does it, or the person named, and never
 * whoever did the work: in a one-hand shop the lead does, or the owner where that shop is the lead.
 */
export const holdRelease = defineCommand({
  name: 'hold.release',
  input: z.strictObject({ hold: HoldId, remark: z.optional(OptionalText) }),
  may: (actor, record, input) => mayClear(actor, record, must(record.holds, input.hold)),
  shops(record, input) {
    const hold = must(record.holds, input.hold)
    return bookOfHands(record, must(record.stages, hold.stage), hold.party)
  },
  decide(record, input, ctx) {
    const hold = must(record.holds, input.hold)
    const unmet = clearConditions(record, hold, 'hold.release', ctx)
    if (unmet.length > 0) return refusal(...unmet)
    return changes(cleared(hold, 'released', input.remark, ctx))
  },
})
