import * as z from 'zod/mini'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { wrongState } from '../record/condition.ts'
import { StageId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { notIn } from './stage-state.ts'

/** Ticks that the precautions of a stage are in place: by who is there, before it starts; anew after a reopening. */
export const stagePrecautions = defineCommand({
  name: 'stage.precautions',
  input: z.strictObject({ stage: StageId }),
  may: (actor, record, input) => actsFor(actor, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'planned', 'paused', 'reopened')
    if (wrong !== null) return refusal(wrong)
    if (stage.hazards.length === 0)
      return refusal(wrongState(stage.id, 'no hazard named', 'one named'))
    return changes({
      ...stage,
      precautionsAt: ctx.happenedAt,
      precautionsBy: ctx.actor.person,
    })
  },
})
