import * as z from 'zod/mini'
import { withHand } from '../gate/did-work.ts'
import { writeReported } from '../gate/reported.ts'
import { startConditions } from '../gate/start.ts'
import { actsForOrTold } from '../record/actor.ts'
import { changes, defineCommand, refusal, toldBy } from '../record/command.ts'
import { PartyId, StageId } from '../record/ids.ts'
import { Instant, Text } from '../record/scalars.ts'
import { Hidden, must } from '../record/table.ts'
import { endConditions, ended } from './end-of-work.ts'
import { notIn } from './stage-state.ts'

/**
 * Reports work that was done outside the gate. A fact is never refused: the stage stands in doubt, with the conditions that
 * were unmet then, until somebody entitled confirms or reopens it. Refuses only times that can't be, and a stage that has begun.
 */
export const stageReportDone = defineCommand({
  name: 'stage.reportDone',
  input: z.strictObject({
    stage: StageId,
    startedAt: Instant,
    endedAt: Instant,
    reason: Text,
    told: z.optional(PartyId),
  }),
  may: (actor, record, input) =>
    actsForOrTold(actor, record, must(record.stages, input.stage).party, input.told),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'planned', 'reopened')
    if (wrong !== null) return refusal(wrong)
    const impossible = endConditions(stage, input.startedAt, input.endedAt, ctx.now)
    if (impossible.length > 0) return refusal(...impossible)
    const unmet = startConditions(record, stage, input.startedAt)
    const hidden = unmet.find(({ rule }) => rule === 'unknown')
    if (hidden !== undefined) throw new Hidden(hidden.entity)
    const by = input.told === undefined ? ctx.actor.person : null
    const over = ended(record, stage, input.endedAt, by)
    return changes(
      {
        ...over.stage,
        state: 'in doubt',
        startedAt: input.startedAt,
        startedBy: by,
        workedBy: withHand(stage, by),
        signedOffAt: null,
        reported: writeReported(unmet),
        doubt: input.reason,
      },
      ...over.assemblies,
      ...over.voided,
      ...toldBy(ctx, 'stage.reportDone', stage.id, input.told, record.id),
    )
  },
})
