import * as z from 'zod/mini'
import { managesFor, managesLead } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, plain } from '../record/condition.ts'
import type { Decision, DecisionOption } from '../record/entities/money.ts'
import type { Stage } from '../record/entities/work.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { CivilDate, Line, Minor, OptionalText } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { notPlanned, partiesLeft } from './set-up.ts'

/**
 * A shop asks somebody to choose. `stages` are those that wait for the choice; `net` is what an option adds to the bill,
 * before tax. Refuses two options alike, and a stage that has begun or waits for another decision.
 */
export const decisionAsk = defineCommand({
  name: 'decision.ask',
  input: z.object({
    question: Line,
    text: z.optional(OptionalText),
    chooser: PartyId,
    decideBy: z.optional(z.nullable(CivilDate)),
    options: z
      .array(z.object({ text: Line, net: z.optional(z.nullable(Minor)) }))
      .check(z.minLength(2, 'at least two options'), z.maxLength(20)),
    stages: z.optional(z.array(StageId).check(z.maxLength(50))),
  }),
  may: (actor, record, input) =>
    actor.role === 'manager' &&
    actor.party !== null &&
    managesFor(actor, actor.party) &&
    (input.stages ?? []).every(
      (stage) => must(record.stages, stage).party === actor.party || managesLead(actor, record),
    ),
  decide(record, input, ctx) {
    const party = must(record.parties, ctx.actor.party ?? '').id
    const decision: Decision = {
      kind: 'decision',
      id: ctx.newId('dcs'),
      project: record.id,
      question: input.question,
      text: input.text ?? '',
      party,
      chooser: input.chooser,
      decideBy: input.decideBy ?? null,
      state: 'asked',
      askedAt: ctx.happenedAt,
      chosen: null,
      chosenAt: null,
      chosenBy: null,
      reason: null,
    }
    const options = input.options.map(
      (option, i): DecisionOption => ({
        kind: 'decisionOption',
        id: ctx.newId('opt'),
        project: record.id,
        decision: decision.id,
        party,
        chooser: input.chooser,
        position: i + 1,
        text: option.text,
        net: option.net ?? null,
      }),
    )
    const stages = [...new Set(input.stages ?? [])].map((id) => must(record.stages, id))
    const wrong: Condition[] = [
      ...partiesLeft(record, [input.chooser]),
      ...stages.flatMap(notPlanned),
    ]
    for (const stage of stages) {
      if (stage.decision !== null && must(record.decisions, stage.decision).state !== 'withdrawn')
        wrong.push({ ...plain(stage.id), rule: 'exists', field: 'decision' })
    }
    if (new Set(options.map((option) => option.text)).size < options.length)
      wrong.push(badInput(decision.id, 'options', 'two of them say the same'))
    if (wrong.length > 0) return refusal(...wrong)
    const waiting = stages.map((stage): Stage => ({ ...stage, decision: decision.id }))
    return changes(decision, ...options, ...waiting)
  },
})
