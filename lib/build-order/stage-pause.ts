import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { notIn } from './stage-state.ts'

/** Pauses work: others may use its assemblies meanwhile. Refuses a stage that isn't in work. */
export const stagePause = defineCommand({
  name: 'stage.pause',
  input: z.strictObject({ stage: StageId, told: z.optional(PartyId) }),
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.stages, input.stage).party, input.told),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'in work')
    if (wrong !== null) return refusal(wrong)
    return changes(
      { ...stage, state: 'paused', pausedAt: ctx.happenedAt },
      ...toldBy(ctx, 'stage.pause', stage.id, input.told, record.id),
    )
  },
})
