import * as z from 'zod/mini'
import { withHand } from '../gate/did-work.ts'
import { resumeConditions } from '../gate/start.ts'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { must } from '../record/table.ts'
import { ownReleasesVoid } from './own-release.ts'
import { notIn } from './stage-state.ts'

/**
 * Puts a paused stage in work again. Much may have changed meanwhile, so it passes the gate again;
 * only the recoat window, which it made in time when it began, isn't counted anew.
 */
export const stageResume = defineCommand({
  name: 'stage.resume',
  input: z.strictObject({ stage: StageId, told: z.optional(PartyId) }),
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.stages, input.stage).party, input.told),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'paused')
    if (wrong !== null) return refusal(wrong)
    const unmet = resumeConditions(record, stage, ctx.happenedAt)
    if (unmet.length > 0) return refusal(...unmet)
    const by = input.told === undefined ? ctx.actor.person : null
    return changes(
      { ...stage, state: 'in work', pausedAt: null, workedBy: withHand(stage, by) },
      ...ownReleasesVoid(record, stage, by),
      ...toldBy(ctx, 'stage.resume', stage.id, input.told, record.id),
    )
  },
})
