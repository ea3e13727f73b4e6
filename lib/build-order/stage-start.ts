import * as z from 'zod/mini'
import { withHand } from '../gate/did-work.ts'
import { startConditions } from '../gate/start.ts'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { ownReleasesVoid } from './own-release.ts'
import { notIn } from './stage-state.ts'

/**
 * Puts a planned or reopened stage in work.
 * Refuses another state, else with the gate's unmet conditions.
 */
export const stageStart = defineCommand({
  name: 'stage.start',
  input: z.strictObject({ stage: StageId, told: z.optional(PartyId) }),
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.stages, input.stage).party, input.told),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'planned', 'reopened')
    if (wrong !== null) return refusal(wrong)
    const unmet = startConditions(record, stage, ctx.happenedAt)
    if (unmet.length > 0) return refusal(...unmet)
    // Whoever enters what was told by phone didn't do the work.
    const by = input.told === undefined ? ctx.actor.person : null
    return changes(
      {
        ...stage,
        state: 'in work',
        startedAt: ctx.happenedAt,
        startedBy: by,
        workedBy: withHand(stage, by),
        pausedAt: null,
        endedAt: null,
        endedBy: null,
      },
      ...ownReleasesVoid(record, stage, by),
      ...toldBy(ctx, 'stage.start', stage.id, input.told, record.id),
    )
  },
})
