import * as z from 'zod/mini'
import { changes, defineCommand, refusal } from '../record/command.ts'
import type { Step } from '../record/entities/evidence.ts'
import type { ProjectId, StageId as StageIdType, StepId } from '../record/ids.ts'
import { StageId } from '../record/ids.ts'
import { Line, Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { maySetUp } from './set-up.ts'
import { notIn } from './stage-state.ts'
import { stepsOf } from './steps.ts'

/** Tools that a step names, at most. */
export const Tools = z.array(Line).check(z.maxLength(20))

/** A step that nobody has ticked yet. */
export const newStep = (
  id: StepId,
  project: ProjectId,
  asked: Pick<Step, 'position' | 'text' | 'tools' | 'caution'> & { readonly stage: StageIdType },
): Step => ({
  kind: 'step',
  id,
  project,
  stage: asked.stage,
  position: asked.position,
  text: asked.text,
  tools: asked.tools,
  caution: asked.caution,
  tickedAt: null,
  tickedBy: null,
  removedAt: null,
})

/**
 * Adds a step to a stage's procedure, last, with the tools that it takes and what to take care of. A step can be added while the work is
 * under way, as long as the stage isn't signed off.
 */
export const stepAdd = defineCommand({
  name: 'step.add',
  input: z.strictObject({
    stage: StageId,
    text: Text,
    tools: z.optional(Tools),
    caution: z.optional(z.nullable(Text)),
  }),
  may: (actor, record, input) => maySetUp(actor, record, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'planned', 'in work', 'paused', 'ended', 'reopened')
    if (wrong !== null) return refusal(wrong)
    const last = stepsOf(record, stage.id).at(-1)?.position ?? 0
    return changes(
      newStep(ctx.newId('stp'), record.id, {
        stage: stage.id,
        position: last + 1,
        text: input.text,
        tools: input.tools ?? [],
        caution: input.caution ?? null,
      }),
    )
  },
})
