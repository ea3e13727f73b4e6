import * as z from 'zod/mini'
import { checkConditions, noEnd } from '../gate/sign-off.ts'
import { actsFor } from '../record/actor.ts'
import { changes, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import { StageId } from '../record/ids.ts'
import { projectAfter } from '../record/project-record.ts'
import { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'
import { dueHandover } from './due-handover.ts'
import { endConditions, ended } from './end-of-work.ts'
import { doubtOf } from './followers.ts'
import { signature } from './signature.ts'
import { notIn } from './stage-state.ts'

/**
 * The party of a stage declares it done; `end` records the end of work in the same press.
 * It stands in doubt where something it relied on was reopened meanwhile. Refuses without an end, or while a check is neither passed nor conceded. Prepares the handover with which the stage ends.
 */
export const stageSignOff = defineCommand({
  name: 'stage.signOff',
  input: z.strictObject({
    stage: StageId,
    end: z.optional(z.strictObject({ endedAt: Instant })),
  }),
  may: (actor, record, input) => actsFor(actor, must(record.stages, input.stage).party),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'in work', 'paused', 'ended')
    if (wrong !== null) return refusal(wrong)
    const isEnded = stage.state === 'ended'
    // An end that stands is changed only with a reason, by a command of its own.
    if (isEnded && input.end !== undefined && input.end.endedAt !== stage.endedAt)
      return refusal(endStands(stage))
    const unmet = [
      ...(isEnded || input.end !== undefined ? [] : [noEnd(stage)]),
      ...(input.end === undefined
        ? []
        : endConditions(stage, stage.startedAt, input.end.endedAt, ctx.now)),
      ...checkConditions(record, stage),
    ]
    if (unmet.length > 0) return refusal(...unmet)
    const over =
      isEnded || input.end === undefined
        ? { stage, assemblies: [], voided: [] }
        : ended(record, stage, input.end.endedAt, ctx.actor.person)
    const after = projectAfter(record, { version: record.version, entities: over.assemblies })
    // Signed off, but something it relied on was reopened while it was in work: that is what *in doubt* means.
    const doubt = doubtOf(record, stage, ctx.happenedAt)
    return changes(
      {
        ...over.stage,
        state: doubt === null ? 'signed off' : 'in doubt',
        signedOffAt: ctx.happenedAt,
        doubt,
      },
      signature(record, stage, 'sign-off', stage.party, ctx),
      ...over.assemblies,
      ...over.voided,
      ...dueHandover(after, over.stage, ctx),
    )
  },
})

const endStands = (stage: Stage): Condition => ({
  ...wrongState(stage.id, stage.state, 'in work', 'paused'),
  since: stage.endedAt,
  clearedBy: [stage.party],
  clearedWith: { command: 'stage.correctEnd', input: { stage: stage.id } },
})
