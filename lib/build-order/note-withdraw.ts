import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { NoteId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** Takes a note back, with a reason; by who wrote it or who manages their party. It stays in the journal. */
export const noteWithdraw = defineCommand({
  name: 'note.withdraw',
  input: z.object({ note: NoteId, reason: Text }),
  may(actor, record, input) {
    const note = must(record.notes, input.note)
    return (
      actor.party === note.party && (actor.person === note.person || managesFor(actor, note.party))
    )
  },
  decide(record, input, ctx) {
    const note = must(record.notes, input.note)
    if (note.withdrawnAt !== null) return refusal(wrongState(note.id, 'withdrawn', 'written'))
    return changes({ ...note, withdrawnAt: ctx.happenedAt })
  },
})
