import * as z from 'zod/mini'
import { holdsOf } from '../gate/indexes.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import type { Condition } from '../record/condition.ts'
import type { Step } from '../record/entities/evidence.ts'
import type { Check, Hold, Link, Stage } from '../record/entities/work.ts'
import { CheckId, StageId, StepId } from '../record/ids.ts'
import { Hours, Line } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { badInput } from './bad-input.ts'
import { drawnLink } from './link-draw.ts'
import { maySetUp, notPlanned } from './set-up.ts'
import { nextNumber } from './stage-add.ts'
import { stageNameConditions } from './stage-name.ts'

/**
 * Makes two stages of a planned one. What it waited for and what it needs at its start stay with the first; what follows it, its hold points,
 * countersigns, handover and what it fits or takes off go with the second, which waits for the first. The checks and steps that are
 * named go with the second too. `hours`: the likely hours of the first; the rest is the second's, least and most in the same shares.
 */
export const stageSplit = defineCommand({
  name: 'stage.split',
  input: z.strictObject({
    stage: StageId,
    first: Line,
    second: Line,
    hours: z.optional(z.nullable(Hours)),
    checks: z.optional(z.array(CheckId).check(z.maxLength(500))),
    steps: z.optional(z.array(StepId).check(z.maxLength(500))),
  }),
  may: (actor, record, input) => maySetUp(actor, record, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const share = shareOf(stage, input.hours ?? null)
    const id = ctx.newId('stg')
    const wrong: Condition[] = [
      ...notPlanned(stage),
      ...stageNameConditions(record, input.first, stage.id),
      ...stageNameConditions(record, input.second, stage.id),
    ]
    if (input.first.trim().toLowerCase() === input.second.trim().toLowerCase())
      wrong.push(badInput(stage.id, 'second', 'named twice'))
    if (share === null) wrong.push(badInput(stage.id, 'hours', 'less than the hours of the whole'))
    const checks = (input.checks ?? []).map((check) => must(record.checks, check))
    const steps = (input.steps ?? []).map((step) => must(record.steps, step))
    if (checks.some((check) => check.stage !== stage.id))
      wrong.push(badInput(stage.id, 'checks', 'not of this stage'))
    if (steps.some((step) => step.stage !== stage.id))
      wrong.push(badInput(stage.id, 'steps', 'not of this stage'))
    if (wrong.length > 0 || share === null) return refusal(...wrong)

    const first: Stage = {
      ...stage,
      ...hoursTimes(stage, share),
      name: input.first,
      fits: [],
      removes: [],
      host: null,
      handoverTo: null,
      countersigns: [],
    }
    const second: Stage = {
      ...stage,
      ...hoursTimes(stage, 1 - share),
      id,
      number: nextNumber(record),
      name: input.second,
      needsFitted: [],
      needsOff: [],
      madeFrom: null,
    }
    const moved: (Check | Step)[] = [...checks, ...steps].map((one) => ({ ...one, stage: id }))
    const after = all(record.links)
      .filter((link) => link.removedAt === null && link.from === stage.id)
      .map((link): Link => ({ ...link, from: id }))
    const holds = holdsOf(record.holds, stage.id).map((hold): Hold => ({ ...hold, stage: id }))
    const between = { from: stage.id, to: id, leastLagHours: 0, greatestLagHours: null }
    const link = drawnLink(ctx.newId('lnk'), record.id, between)
    return changes(first, second, link, ...after, ...holds, ...moved)
  },
})

/** The first's share of the hours; half where none are given; null where it would leave nothing to the second. */
function shareOf(stage: Stage, hours: number | null): number | null {
  if (hours === null || stage.hoursLikely === null || stage.hoursLikely === 0) return 0.5
  return hours < stage.hoursLikely ? hours / stage.hoursLikely : null
}

const hoursTimes = (
  { hoursLeast, hoursLikely, hoursMost }: Stage,
  share: number,
): Pick<Stage, 'hoursLeast' | 'hoursLikely' | 'hoursMost'> => ({
  hoursLeast: times(hoursLeast, share),
  hoursLikely: times(hoursLikely, share),
  hoursMost: times(hoursMost, share),
})

/** To a hundredth of an hour, as hours are typed. */
const times = (hours: number | null, share: number): number | null =>
  hours === null ? null : Math.round(hours * share * 100) / 100
