import * as z from 'zod/mini'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { endConditions, ended } from './end-of-work.ts'
import { notIn } from './stage-state.ts'

/**
 * Records that the work of a stage is over, and since when; lags run from then. It may be entered late.
 * What the stage fits is on its host from now on, what it takes off is off. Refuses an end before the start or in the future.
 */
export const stageEnd = defineCommand({
  name: 'stage.end',
  input: z.strictObject({
    stage: StageId,
    endedAt: z.optional(Instant),
    told: z.optional(PartyId),
  }),
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.stages, input.stage).party, input.told),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'in work', 'paused')
    if (wrong !== null) return refusal(wrong)
    const endedAt = input.endedAt ?? ctx.happenedAt
    const impossible = endConditions(stage, stage.startedAt, endedAt, ctx.now)
    if (impossible.length > 0) return refusal(...impossible)
    const by = input.told === undefined ? ctx.actor.person : null
    const over = ended(record, stage, endedAt, by)
    return changes(
      over.stage,
      ...over.assemblies,
      ...over.voided,
      ...toldBy(ctx, 'stage.end', stage.id, input.told, record.id),
    )
  },
})
