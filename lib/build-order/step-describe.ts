import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Step } from '../record/entities/evidence.ts'
import { StepId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { maySetUp } from './set-up.ts'
import { notIn } from './stage-state.ts'
import { Tools } from './step-add.ts'
import { stepsOf } from './steps.ts'

/** Why a step can't be changed any more. What was ticked was done as it stood. */
export function stepFixed(record: ProjectRecord, step: Step): Condition[] {
  if (step.removedAt !== null) return [wrongState(step.id, 'removed', 'on the card')]
  if (step.tickedAt !== null) return [wrongState(step.id, 'ticked', 'not ticked')]
  const wrong = notIn(
    must(record.stages, step.stage),
    'planned',
    'in work',
    'paused',
    'ended',
    'reopened',
  )
  return wrong === null ? [] : [wrong]
}

/** Changes the words, tools or caution of a step that nobody has ticked, or its place among the others (1 is the first). */
export const stepDescribe = defineCommand({
  name: 'step.describe',
  input: z.strictObject({
    step: StepId,
    text: z.optional(Text),
    tools: z.optional(Tools),
    caution: z.optional(z.nullable(Text)),
    place: z.optional(z.int().check(z.minimum(1), z.maximum(1_000))),
  }),
  may: (actor, record, input) =>
    maySetUp(actor, record, must(record.stages, must(record.steps, input.step).stage).party),
  decide(record, input) {
    const step = must(record.steps, input.step)
    const wrong = stepFixed(record, step)
    if (wrong.length > 0) return refusal(...wrong)
    const described: Step = {
      ...step,
      text: input.text ?? step.text,
      tools: input.tools ?? step.tools,
      caution: input.caution === undefined ? step.caution : input.caution,
    }
    if (input.place === undefined) return changes(described)
    const order = stepsOf(record, step.stage).filter(({ id }) => id !== step.id)
    order.splice(input.place - 1, 0, described)
    const moved = order.map((one, i): Step => ({ ...one, position: i + 1 }))
    return changes(
      ...moved.filter(
        (one) => one.id === step.id || one.position !== must(record.steps, one.id).position,
      ),
    )
  },
})
