import * as z from 'zod/mini'
import { holdsOf, signOffsOf } from '../gate/indexes.ts'
import { startConditions } from '../gate/start.ts'
import { actsFor, managesLead } from '../record/actor.ts'
import { type Context, changes, type Decided, defineCommand, refusal } from '../record/command.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Handover } from '../record/entities/things.ts'
import type { SignOff, Stage } from '../record/entities/work.ts'
import { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { type Instant, Text } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { beforeFitting } from './fit-effects.ts'
import { startedFollowers } from './followers.ts'
import { notIn } from './stage-state.ts'

/**
 * Takes back the last press on a stage, with a reason: a start, an end of work, a sign-off. What the press did to fitted
 * things, signatures and a prepared handover is undone with it. Refuses once something that relied on it has begun: then
 * the stage is reopened instead.
 */
export const stageTakeBack = defineCommand({
  name: 'stage.takeBack',
  input: z.strictObject({ stage: StageId, reason: Text }),
  may(actor, record, input) {
    const stage = must(record.stages, input.stage)
    // The lead enters what is told by phone, and may have mistaken it; a party's sign-off is its own.
    return (
      actsFor(actor, stage.party) || (stage.state !== 'signed off' && managesLead(actor, record))
    )
  },
  decide(record, input, ctx) {
    const stage = must(record.stages, input.stage)
    const wrong = notIn(stage, 'in work', 'ended', 'signed off')
    if (wrong !== null) return refusal(wrong)
    if (stage.state === 'in work') return startTakenBack(record, stage)
    if (stage.state === 'ended') return endTakenBack(record, stage, ctx)
    return signOffTakenBack(record, stage, input.reason, ctx)
  },
})

function startTakenBack(record: ProjectRecord, stage: Stage): Decided {
  const begun = stage.startedAt ?? ''
  // A witness may have waived long before; what was released while it was in work was seen.
  const cleared = holdsOf(record.holds, stage.id).filter(
    (hold) => hold.clearedAt !== null && hold.clearedAt >= begun,
  )
  if (cleared.length > 0) {
    return refusal(
      ...cleared.map((hold) => ({
        ...wrongState(hold.id, hold.state, 'set', 'invited'),
        since: hold.clearedAt,
        clearedBy: [hold.party],
        clearedWith: { command: 'hold.takeBack' as const, input: { hold: hold.id } },
      })),
    )
  }
  // A stage that stood reopened keeps its doubt until it is signed off again.
  const state = stage.doubt === null ? 'planned' : 'reopened'
  const workedBy = stage.doubt === null ? [] : stage.workedBy
  return changes({ ...stage, state, startedAt: null, startedBy: null, workedBy, pausedAt: null })
}

function endTakenBack(record: ProjectRecord, stage: Stage, ctx: Context): Decided {
  const begun = startedFollowers(record, stage)
  // It is in work again, so it needs what it works on: others may have it meanwhile.
  const gone = startConditions(record, stage, ctx.happenedAt).filter(
    ({ rule }) => rule === 'custody' || rule === 'exclusive-use',
  )
  if (begun.length + gone.length > 0) return refusal(...begun, ...gone)
  return changes(
    { ...stage, state: 'in work', endedAt: null, endedBy: null },
    ...beforeFitting(record, stage),
  )
}

function signOffTakenBack(
  record: ProjectRecord,
  stage: Stage,
  reason: string,
  ctx: Context,
): Decided {
  const begun = startedFollowers(record, stage)
  const since = stage.signedOffAt ?? ''
  const handovers = all(record.handovers).filter(
    (handover) => handover.stage === stage.id && lastMoved(handover) >= since,
  )
  const gone = handovers.flatMap(underWay)
  if (begun.length + gone.length > 0) return refusal(...begun, ...gone)
  const prepared = handovers
    .filter((handover) => handover.state === 'prepared')
    .map((handover): Handover => ({ ...handover, state: 'taken back' }))
  const signed = signOffsOf(record.signOffs, stage.id)
  const withdrawn = (sign: SignOff): SignOff => ({ ...sign, withdrawnAt: ctx.happenedAt, reason })
  const confirm = signed.findLast((sign) => sign.type === 'confirm')
  if (confirm !== undefined) {
    // What was confirmed stands in doubt again; a sign-off before it isn't the press that is taken back.
    const signedOffAt = signed.some(({ type }) => type === 'sign-off') ? stage.signedOffAt : null
    const doubted: Stage = { ...stage, state: 'in doubt', doubt: reason, signedOffAt }
    return changes(doubted, withdrawn(confirm), ...prepared)
  }
  return changes(
    { ...stage, state: 'ended', signedOffAt: null },
    ...signed.map(withdrawn),
    ...prepared,
  )
}

const lastMoved = (handover: Handover): Instant =>
  handover.receivedAt ?? handover.releasedAt ?? handover.preparedAt

/** A handover that has left the shop must come back first. */
function underWay(handover: Handover): Condition[] {
  if (handover.state !== 'released' && handover.state !== 'received') return []
  const released = handover.state === 'released'
  return [
    {
      ...wrongState(handover.id, handover.state, 'prepared', 'taken back'),
      since: handover.receivedAt ?? handover.releasedAt,
      clearedBy: [handover.from],
      clearedWith: released
        ? { command: 'handover.takeBack', input: { handover: handover.id } }
        : { command: 'stage.reopen', input: { stage: handover.stage } },
    },
  ]
}
