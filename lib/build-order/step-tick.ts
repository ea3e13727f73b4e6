import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { StepId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { notIn } from './stage-state.ts'

/** Ticks a step as done, or takes the tick away again. Only while the stage is worked on: a tick beforehand would prove nothing. */
export const stepTick = defineCommand({
  name: 'step.tick',
  input: z.strictObject({ step: StepId, done: z.boolean() }),
  may: (actor, record, input) =>
    actsFor(actor, must(record.stages, must(record.steps, input.step).stage).party),
  decide(record, input, ctx) {
    const step = must(record.steps, input.step)
    if (step.removedAt !== null) return refusal(wrongState(step.id, 'removed', 'on the card'))
    const wrong = notIn(must(record.stages, step.stage), 'in work', 'paused', 'ended', 'in doubt')
    if (wrong !== null) return refusal(wrong)
    const ticked = step.tickedAt !== null
    if (ticked === input.done)
      return refusal(
        wrongState(step.id, ticked ? 'ticked' : 'not ticked', ticked ? 'not ticked' : 'ticked'),
      )
    return changes(
      input.done
        ? { ...step, tickedAt: ctx.happenedAt, tickedBy: ctx.actor.person }
        : { ...step, tickedAt: null, tickedBy: null },
    )
  },
})
