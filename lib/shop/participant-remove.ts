import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { ParticipantId } from '../record/ids.ts'
import { must } from '../record/table.ts'

/** Ends a person's part in the project: by the lead or the party itself. What they did stays theirs. */
export const participantRemove = defineCommand({
  name: 'participant.remove',
  input: z.strictObject({ participant: ParticipantId }),
  may(actor, record, input) {
    const { party } = must(record.participants, input.participant)
    return managesLead(actor, record) || managesFor(actor, party)
  },
  decide(record, input, ctx) {
    const participant = must(record.participants, input.participant)
    if (participant.removedAt !== null)
      return refusal(wrongState(participant.id, 'removed', 'in the project'))
    return changes({ ...participant, removedAt: ctx.happenedAt })
  },
})
