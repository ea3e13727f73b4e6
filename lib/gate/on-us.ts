import { payerOf } from '../money/approval.ts'
import type { Clearing } from '../record/condition.ts'
import type { ChangeOrder } from '../record/entities/money.ts'
import type { Stage } from '../record/entities/work.ts'
import type { PartyId, ProjectId, StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'
import { isPassed } from './start/hold.ts'
import { isCountersigned } from './start/predecessor.ts'
import { unmetNow } from './unmet-now.ts'

/** Something that others wait for from one party, with the press that does it. */
export interface OnUs {
  readonly project: ProjectId
  readonly kind:
    | 'ask'
    | 'hold'
    | 'countersign'
    | 'confirm'
    | 'release'
    | 'receive'
    | 'send change order'
    | 'answer change order'
    | 'choose'
    | 'inspect'
    | 'agree slot'
  readonly entity: string
  readonly stage: StageId | null
  /** Who waits; null where the project as a whole does. */
  readonly for: PartyId | null
  readonly since: Instant | null
  readonly press: Clearing
}

/** Everything that others wait for from that party, as its view has it. */
export const onUs = (record: ProjectRecord, party: PartyId, at: Instant): OnUs[] => [
  ...asksTo(record, party, at),
  ...stagesFor(record, party),
  ...holdsFor(record, party, at),
  ...handoversFor(record, party),
  ...ordersFor(record, party),
  ...choicesFor(record, party),
  ...slotsFor(record, party, at),
]

/** Asks whose condition is still unmet; one that is met is answered by itself. */
const asksTo = (record: ProjectRecord, party: PartyId, at: Instant): OnUs[] =>
  all(record.asks)
    .filter((ask) => ask.to === party && ask.closedAt === null)
    .flatMap((ask) => {
      const unmet = unmetNow(record, must(record.stages, ask.stage), at).find(
        (condition) => condition.rule === ask.rule && condition.entity === ask.entity,
      )
      if (unmet === undefined) return []
      const close = { command: 'ask.close', input: { ask: ask.id } } as const
      const mine = unmet.clearedBy.includes(party) ? unmet.clearedWith : null
      return {
        project: record.id,
        kind: 'ask',
        entity: ask.id,
        stage: ask.stage,
        for: ask.from,
        since: ask.at,
        press: mine ?? close,
      }
    })

function stagesFor(record: ProjectRecord, party: PartyId): OnUs[] {
  const stages = all(record.stages).filter((stage) => stage.removedAt === null)
  const line = (stage: Stage) => ({ project: record.id, entity: stage.id, stage: stage.id })
  const countersigns = stages
    .filter((stage) => stage.state === 'signed off' && stage.countersigns.includes(party))
    .filter((stage) => !isCountersigned(record, stage, party))
    .map(
      (stage): OnUs => ({
        ...line(stage),
        kind: 'countersign',
        for: stage.party,
        since: stage.signedOffAt,
        press: { command: 'stage.countersign', input: { stage: stage.id, for: party } },
      }),
    )
  const doubted = stages
    .filter((stage) => stage.state === 'in doubt' && stage.party === party)
    .map(
      (stage): OnUs => ({
        ...line(stage),
        kind: 'confirm',
        for: null,
        since: stage.endedAt,
        press: { command: 'stage.confirm', input: { stage: stage.id } },
      }),
    )
  return [...countersigns, ...doubted]
}

const holdsFor = (record: ProjectRecord, party: PartyId, at: Instant): OnUs[] =>
  all(record.holds)
    .filter(
      (hold) => hold.party === party && hold.removedAt === null && !isPassed(record, hold, at),
    )
    .filter((hold) => {
      const stage = must(record.stages, hold.stage)
      const isToCome = stage.state === 'planned' || stage.state === 'reopened'
      // Before the work begins there is nothing to see, but an invitation wants its answer.
      return stage.removedAt === null && (!isToCome || hold.state === 'invited')
    })
    .map((hold) => ({
      project: record.id,
      kind: 'hold',
      entity: hold.id,
      stage: hold.stage,
      for: must(record.stages, hold.stage).party,
      since: hold.invitedAt ?? hold.setAt,
      press: { command: 'hold.release', input: { hold: hold.id } },
    }))

function handoversFor(record: ProjectRecord, party: PartyId): OnUs[] {
  const lines = all(record.handovers).map((handover) => ({
    project: record.id,
    handover,
    entity: handover.id,
    stage: handover.stage,
  }))
  const release = lines
    .filter(({ handover }) => handover.state === 'prepared' && handover.from === party)
    .map(
      ({ handover, ...line }): OnUs => ({
        ...line,
        kind: 'release',
        for: handover.to,
        since: handover.preparedAt,
        press: { command: 'handover.release', input: { handover: handover.id } },
      }),
    )
  const receive = lines
    .filter(({ handover }) => handover.state === 'released' && handover.to === party)
    .map(
      ({ handover, ...line }): OnUs => ({
        ...line,
        kind: 'receive',
        for: handover.from,
        since: handover.releasedAt,
        press: { command: 'handover.receive', input: { handover: handover.id } },
      }),
    )
  return [...release, ...receive]
}

function ordersFor(record: ProjectRecord, party: PartyId): OnUs[] {
  const line = (order: ChangeOrder) => ({
    project: record.id,
    entity: order.id,
    stage: all(record.stages).find((stage) => stage.changeOrder === order.id)?.id ?? null,
  })
  return all(record.changeOrders).flatMap((order): OnUs[] => {
    const press = { changeOrder: order.id }
    if (order.state === 'draft' && order.party === party)
      return [
        {
          ...line(order),
          kind: 'send change order',
          for: null,
          since: order.raisedAt,
          press: { command: 'changeOrder.send', input: press },
        },
      ]
    if (order.state !== 'sent' || payerOf(record, must(record.parties, order.party))?.id !== party)
      return []
    return [
      {
        ...line(order),
        kind: 'answer change order',
        for: order.party,
        since: order.sentAt,
        press: { command: 'changeOrder.approve', input: press },
      },
    ]
  })
}

function choicesFor(record: ProjectRecord, party: PartyId): OnUs[] {
  const choose = all(record.decisions)
    .filter((decision) => decision.state === 'asked' && decision.chooser === party)
    .map(
      (decision): OnUs => ({
        project: record.id,
        kind: 'choose',
        entity: decision.id,
        stage: all(record.stages).find((stage) => stage.decision === decision.id)?.id ?? null,
        for: decision.party,
        since: decision.askedAt,
        press: { command: 'decision.choose', input: { decision: decision.id } },
      }),
    )
  const inspect = all(record.parts)
    .filter((part) => part.state === 'arrived' && part.party === party && part.withdrawnAt === null)
    .map(
      (part): OnUs => ({
        project: record.id,
        kind: 'inspect',
        entity: part.id,
        stage: part.stages[0] ?? null,
        for: null,
        since: part.arrivedAt,
        press: { command: 'part.inspect', input: { part: part.id } },
      }),
    )
  return [...choose, ...inspect]
}

/** The lead agrees to the slots that others ask for, while there is something of them to come. */
const slotsFor = (record: ProjectRecord, party: PartyId, at: Instant): OnUs[] =>
  all(record.slots)
    .filter((slot) => slot.state === 'asked' && slot.to > at && must(record.parties, party).lead)
    .map((slot) => ({
      project: record.id,
      kind: 'agree slot',
      entity: slot.id,
      stage: slot.stage,
      for: slot.party,
      since: slot.askedAt,
      press: { command: 'slot.agree', input: { slot: slot.id } },
    }))
