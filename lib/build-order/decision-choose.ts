import * as z from 'zod/mini'
import { managesFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { DecisionId, DecisionOptionId } from '../record/ids.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { badInput } from './bad-input.ts'

/** The party that was asked chooses one of the options; nobody does it for them. Refuses what is chosen or withdrawn. */
export const decisionChoose = defineCommand({
  name: 'decision.choose',
  input: z.object({
    decision: DecisionId,
    option: DecisionOptionId,
    reason: z.optional(z.nullable(Text)),
  }),
  may: (actor, record, input) => managesFor(actor, must(record.decisions, input.decision).chooser),
  decide(record, input, ctx) {
    const decision = must(record.decisions, input.decision)
    const option = must(record.decisionOptions, input.option)
    if (decision.state !== 'asked') return refusal(wrongState(decision.id, decision.state, 'asked'))
    if (option.decision !== decision.id)
      return refusal(badInput(decision.id, 'option', 'it belongs to another question'))
    return changes({
      ...decision,
      state: 'chosen',
      chosen: option.id,
      chosenAt: ctx.happenedAt,
      chosenBy: ctx.actor.person,
      reason: input.reason ?? null,
    })
  },
})
