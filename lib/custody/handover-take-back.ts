import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { HandoverId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** Takes back a handover that was not received yet; custody never moved. Refuses one that is over. */
export const handoverTakeBack = defineCommand({
  name: 'handover.takeBack',
  input: z.strictObject({ handover: HandoverId, reason: Text }),
  may: (actor, record, input) => actsFor(actor, must(record.handovers, input.handover).from),
  decide(record, input) {
    const handover = must(record.handovers, input.handover)
    if (handover.state !== 'prepared' && handover.state !== 'released')
      return refusal(wrongState(handover.id, handover.state, 'prepared', 'released'))
    return changes({ ...handover, state: 'taken back', remarks: input.reason })
  },
})
