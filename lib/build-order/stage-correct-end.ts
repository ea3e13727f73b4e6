import * as z from 'zod/mini'
import { hoursAfter } from '../gate/hours-after.ts'
import { linksFrom } from '../gate/indexes.ts'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import type { Stage } from '../record/entities/work.ts'
import { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Instant, Text } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { endConditions } from './end-of-work.ts'
import { inDoubtAfter } from './followers.ts'
import { notIn } from './stage-state.ts'

/**
 * Corrects the recorded end of work, with a reason. What was signed off on a cure that by the corrected end had not run is
 * in doubt from now on, with all that relied on it. Refuses an end before the start or in the future.
 */
export const stageCorrectEnd = defineCommand({
  name: 'stage.correctEnd',
  input: z.strictObject({ stage: StageId, endedAt: Instant, reason: Text }),
  may: (actor, record, input) => actsFor(actor, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'ended', 'signed off', 'in doubt')
    if (wrong !== null) return refusal(wrong)
    const impossible = endConditions(stage, stage.startedAt, input.endedAt, ctx.now)
    if (impossible.length > 0) return refusal(...impossible)
    const tooEarly = startedTooEarly(record, stage, input.endedAt)
    const doubted = tooEarly
      .filter((after) => after.state === 'signed off')
      .map((after): Stage => ({ ...after, state: 'in doubt', doubt: input.reason }))
    return changes(
      { ...stage, endedAt: input.endedAt },
      ...doubted,
      ...inDoubtAfter(
        record,
        tooEarly.map(({ id }) => id),
        input.reason,
      ).filter((after) => after.id !== stage.id),
    )
  },
})

/** What began before the cure from the corrected end had run. */
const startedTooEarly = (record: ProjectRecord, stage: Stage, endedAt: Instant): Stage[] =>
  linksFrom(record.links, stage.id).flatMap((link) => {
    const after = must(record.stages, link.to)
    const until = hoursAfter(endedAt, link.leastLagHours)
    return after.removedAt === null && after.startedAt !== null && after.startedAt < until
      ? [after]
      : []
  })
