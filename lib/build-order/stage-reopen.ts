import * as z from 'zod/mini'
import { withHand } from '../gate/did-work.ts'
import { checksOf, concessionsOf, holdsOf, signOffsOf } from '../gate/indexes.ts'
import { managesFor, managesLead } from '../record/actor.ts'
import { type Context, changes, defineCommand, refusal } from '../record/command.ts'
import type { Handover } from '../record/entities/things.ts'
import type { Check, Concession, Hold, SignOff, Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Text } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { inDoubtAfter } from './followers.ts'
import { notIn } from './stage-state.ts'

/**
 * Reopens a stage that was signed off, with a reason. Everything signed off downstream that relied on it is in doubt until
 * it is confirmed or reopened too. Its signatures are withdrawn, its checks and hold points are to be passed anew: what they
 * said of the earlier work stays readable.
 */
export const stageReopen = defineCommand({
  name: 'stage.reopen',
  input: z.strictObject({ stage: StageId, reason: Text }),
  may: (actor, record, input) =>
    managesFor(actor, must(record.stages, input.stage).party) || managesLead(actor, record),
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'signed off', 'in doubt')
    if (wrong !== null) return refusal(wrong)
    return changes(
      {
        ...stage,
        state: 'reopened',
        precautionsAt: null,
        precautionsBy: null,
        signedOffAt: null,
        doubt: input.reason,
        // Their work stays in it, whoever goes on.
        workedBy: withHand(stage, stage.endedBy),
      },
      ...evidenceVoid(record, stage, input.reason, ctx),
      ...inDoubtAfter(record, [stage.id], input.reason),
    )
  },
})

function evidenceVoid(record: ProjectRecord, stage: Stage, reason: string, ctx: Context): Entity[] {
  const signatures = signOffsOf(record.signOffs, stage.id).map(
    (sign): SignOff => ({ ...sign, withdrawnAt: ctx.happenedAt, reason }),
  )
  const checks = checksOf(record.checks, stage.id)
    .filter((check) => check.state !== 'missing')
    .map((check): Check => ({ ...check, state: 'missing' }))
  const holds = holdsOf(record.holds, stage.id)
    .filter((hold) => hold.state !== 'set')
    .map(
      (hold): Hold => ({
        ...hold,
        state: 'set',
        invitedAt: null,
        visitAt: null,
        clearedAt: null,
        clearedBy: null,
      }),
    )
  // A concession spoke of one reading of the earlier work.
  const concessions = concessionsOf(record.concessions, stage.id)
    .filter((concession) => concession.rule === 'check')
    .map((concession): Concession => ({ ...concession, withdrawnAt: ctx.happenedAt }))
  const handovers = all(record.handovers)
    .filter((handover) => handover.stage === stage.id && handover.state === 'prepared')
    .map((handover): Handover => ({ ...handover, state: 'taken back' }))
  return [...signatures, ...checks, ...holds, ...concessions, ...handovers]
}
