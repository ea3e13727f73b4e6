import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { DecisionId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { notPlanned } from './set-up.ts'

/**
 * Takes a question back, or a choice that was a mistake (then it is asked anew). By who asked, the lead, or who chose.
 * Refuses once work has begun that rests on the choice.
 */
export const decisionWithdraw = defineCommand({
  name: 'decision.withdraw',
  input: z.object({ decision: DecisionId, reason: Text }),
  may(actor, record, input) {
    const decision = must(record.decisions, input.decision)
    return (
      (actor.role === 'manager' && managesFor(actor, decision.party)) ||
      managesLead(actor, record) ||
      (decision.state === 'chosen' && managesFor(actor, decision.chooser))
    )
  },
  decide(record, input) {
    const decision = must(record.decisions, input.decision)
    if (decision.state === 'withdrawn')
      return refusal(wrongState(decision.id, 'withdrawn', 'asked', 'chosen'))
    const begun = all(record.stages)
      .filter((stage) => stage.decision === decision.id && stage.removedAt === null)
      .flatMap(notPlanned)
    if (decision.state === 'chosen' && begun.length > 0) return refusal(...begun)
    return changes({ ...decision, state: 'withdrawn', reason: input.reason })
  },
})
