import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { OpenWindowId } from '../record/ids.ts'
import { must } from '../record/table.ts'

/** Closes an open window; slots agreed inside it stay. */
export const windowClose = defineCommand({
  name: 'window.close',
  input: z.strictObject({ window: OpenWindowId }),
  may: (actor, record) => managesLead(actor, record),
  decide(record, input, ctx) {
    const window = must(record.openWindows, input.window)
    if (window.closedAt !== null) return refusal(wrongState(window.id, 'closed', 'open'))
    return changes({ ...window, closedAt: ctx.happenedAt })
  },
})
