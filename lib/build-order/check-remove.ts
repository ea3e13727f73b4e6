import * as z from 'zod/mini'
import { managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { CheckId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { notPlanned } from './set-up.ts'

/**
 * No longer asks for a check, with a reason. Refuses once work on the stage has begun, and where something was recorded:
 * evidence stays.
 */
export const checkRemove = defineCommand({
  name: 'check.remove',
  input: z.object({ check: CheckId, reason: Text }),
  may(actor, record, input) {
    must(record.checks, input.check)
    return managesLead(actor, record)
  },
  decide(record, input, ctx) {
    const check = must(record.checks, input.check)
    if (check.removedAt !== null) return refusal(wrongState(check.id, 'removed', 'missing'))
    const wrong = notPlanned(must(record.stages, check.stage))
    if (check.state !== 'missing') wrong.push(wrongState(check.id, check.state, 'missing'))
    return wrong.length > 0 ? refusal(...wrong) : changes({ ...check, removedAt: ctx.happenedAt })
  },
})
