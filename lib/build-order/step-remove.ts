import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { StepId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { maySetUp } from './set-up.ts'
import { stepFixed } from './step-describe.ts'

/** Takes a step off the card. One that was ticked stays: it was done. */
export const stepRemove = defineCommand({
  name: 'step.remove',
  input: z.strictObject({ step: StepId }),
  may: (actor, record, input) =>
    maySetUp(actor, record, must(record.stages, must(record.steps, input.step).stage).party),
  decide(record, input, ctx) {
    const step = must(record.steps, input.step)
    const wrong = stepFixed(record, step)
    return wrong.length > 0 ? refusal(...wrong) : changes({ ...step, removedAt: ctx.happenedAt })
  },
})
