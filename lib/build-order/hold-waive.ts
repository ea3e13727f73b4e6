import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { HoldId } from '../record/ids.ts'
import { OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { clearConditions, cleared, mayClear } from './clear-hold.ts'
import { notOpen } from './hold-state.ts'
import { bookOfHands, ownWorkConditions } from './own-work.ts'

/** The witness does without being there. Only a witness point is waived; a hold point is seen and released. */
export const holdWaive = defineCommand({
  name: 'hold.waive',
  input: z.strictObject({ hold: HoldId, remark: z.optional(OptionalText) }),
  may: (actor, record, input) => mayClear(actor, record, must(record.holds, input.hold)),
  shops(record, input) {
    const hold = must(record.holds, input.hold)
    return bookOfHands(record, must(record.stages, hold.stage), hold.party)
  },
  decide(record, input, ctx) {
    const hold = must(record.holds, input.hold)
    if (hold.point !== 'witness') {
      return refusal({
        ...wrongState(hold.id, 'hold point', 'witness point'),
        clearedBy: [hold.party],
        clearedWith: { command: 'hold.release', input: { hold: hold.id } },
      })
    }
    // A witness may say so long before the work begins; whoever did the work still never does.
    const stage = must(record.stages, hold.stage)
    const press = { command: 'hold.waive', input: { hold: hold.id } } as const
    const unmet =
      notOpen(hold) === null
        ? ownWorkConditions(record, stage, hold.party, press, ctx)
        : clearConditions(record, hold, 'hold.waive', ctx)
    if (unmet.length > 0) return refusal(...unmet)
    return changes(cleared(hold, 'waived', input.remark, ctx))
  },
})
