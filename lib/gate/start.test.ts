import { describe, expect, it } from 'vitest'
import {
  aChangeOrder,
  aDecision,
  aHandover,
  aHold,
  aLink,
  anAssembly,
  anEngine,
  anId,
  aPart,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  owner,
  project,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import type { Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { CivilDate } from '../record/scalars.ts'
import { withRows } from '../record/table.ts'
import { resumeConditions, startConditions } from './start.ts'

const paint = aStage({ name: 'Colour', assemblies: [shellId] })
const wings = aStage({ name: 'Wings hung', assemblies: [shellId] })
const unmet = (stage: Stage, when: number, ...entities: Entity[]) =>
  startConditions(aRecord(aShell(), anEngine(), stage, ...entities), stage, at(when))
const done = (hours: number, over: Partial<Stage> = {}): Stage => ({
  ...paint,
  state: 'signed off',
  startedAt: at(0),
  endedAt: at(hours),
  signedOffAt: at(hours + 30),
  ...over,
})

describe('a stage that depends on another', () => {
  const link = aLink({ from: paint.id, to: wings.id })

  it('waits until the other is signed off, and offers the next press to its party', () => {
    expect(unmet(wings, 100, paint, link)).toMatchObject([
      {
        rule: 'predecessor',
        entity: paint.id,
        is: 'planned',
        concedable: true,
        clearedBy: [lead],
        clearedWith: { command: 'stage.start', input: { stage: paint.id } },
      },
    ])
    expect(unmet(wings, 100, { ...paint, state: 'ended', endedAt: at(9) }, link)).toMatchObject([
      { rule: 'predecessor', is: 'ended', clearedWith: { command: 'stage.signOff' } },
    ])
    expect(unmet(wings, 100, done(9), link)).toEqual([])
  })

  it('waits while the other is in doubt or reopened', () => {
    expect(unmet(wings, 100, done(9, { state: 'in doubt' }), link)).toMatchObject([
      { rule: 'predecessor', is: 'in doubt', clearedWith: { command: 'stage.confirm' } },
    ])
    expect(unmet(wings, 100, done(9, { state: 'reopened' }), link)).toMatchObject([
      { rule: 'predecessor', is: 'reopened', clearedWith: { command: 'stage.start' } },
    ])
  })

  it('is never conceded past safety work, on either side', () => {
    expect(unmet(wings, 100, { ...paint, safety: true }, link)).toMatchObject([
      { rule: 'predecessor', concedable: false },
    ])
    expect(unmet({ ...wings, safety: true }, 100, paint, link)).toMatchObject([
      { rule: 'predecessor', concedable: false },
    ])
  })

  it('waits for every countersign asked for', () => {
    const asked = done(9, { countersigns: [engineShop, owner] })
    const signed = {
      kind: 'signOff' as const,
      id: anId('sgn', 'one'),
      project,
      stage: paint.id,
      party: engineShop,
      type: 'countersign' as const,
      person: anId('psn', 'wyn'),
      at: at(40),
      withdrawnAt: null,
      reason: null,
    }
    expect(unmet(wings, 100, asked, link, signed)).toMatchObject([
      {
        rule: 'countersign',
        party: owner,
        clearedBy: [owner],
        clearedWith: { command: 'stage.countersign', input: { stage: paint.id } },
      },
    ])
    expect(unmet(wings, 100, asked, link, { ...signed, withdrawnAt: at(50) })).toHaveLength(2)
  })

  it('does not wait for a stage or a link that was removed', () => {
    expect(unmet(wings, 100, { ...paint, removedAt: at(1) }, link)).toEqual([])
    expect(unmet(wings, 100, paint, { ...link, removedAt: at(1) })).toEqual([])
  })
})

describe('cure and recoat window', () => {
  const cure = aLink({ from: paint.id, to: wings.id, leastLagHours: 24 })
  const window = aLink({ from: paint.id, to: wings.id, greatestLagHours: 72 })

  it('counts cure from the recorded end of work, never from the later sign-off', () => {
    expect(unmet(wings, 33.9, done(10), cure)).toMatchObject([
      { rule: 'least-lag', entity: cure.id, since: at(10), until: at(34), clearedBy: [] },
    ])
    expect(unmet(wings, 34, done(10), cure)).toEqual([])
  })

  it('runs while the signature is still owed', () => {
    expect(unmet(wings, 20, done(10, { state: 'ended' }), cure)).toMatchObject([
      { rule: 'predecessor' },
      { rule: 'least-lag', until: at(34) },
    ])
  })

  it('lets the coat go on in the last moment of its window, and not after', () => {
    expect(unmet(wings, 82, done(10), window)).toEqual([])
    expect(unmet(wings, 82.001, done(10), window)).toMatchObject([
      { rule: 'greatest-lag', ranOutAt: at(82), concedable: true },
    ])
  })

  it('does not count the window against work that began in it and was paused', () => {
    const record = aRecord(aShell(), done(10), wings, window)
    expect(startConditions(record, wings, at(200))).toHaveLength(1)
    expect(resumeConditions(record, wings, at(200))).toEqual([])
  })

  it('says nothing of a lag while the work before goes on', () => {
    const spraying = { ...paint, state: 'in work' as const, startedAt: at(1), assemblies: [] }
    expect(unmet(wings, 20, spraying, cure)).toMatchObject([{ rule: 'predecessor' }])
  })
})

describe('custody and use', () => {
  const engineIn = aStage({ assemblies: [engineId], host: shellId, fits: [engineId] })

  it('asks for custody of all that a stage works on, and offers the release', () => {
    const engine = anEngine({ custodian: engineShop, since: at(5) })
    expect(unmet(engineIn, 100, engine)).toMatchObject([
      {
        rule: 'custody',
        entity: engineId,
        custodian: engineShop,
        since: at(5),
        concedable: false,
        handover: null,
        clearedBy: [engineShop],
        clearedWith: { command: 'handover.prepare', input: { assemblies: [engineId], to: lead } },
      },
    ])
  })

  it('is to be released by one and then received by the other', () => {
    const engine = anEngine({ custodian: engineShop })
    const handover = aHandover()
    expect(unmet(engineIn, 100, engine, handover)).toMatchObject([
      { clearedBy: [engineShop], clearedWith: { command: 'handover.release' } },
    ])
    expect(unmet(engineIn, 100, engine, { ...handover, state: 'released' })).toMatchObject([
      {
        handover: handover.id,
        clearedBy: [lead],
        clearedWith: { command: 'handover.receive', input: { handover: handover.id } },
      },
    ])
  })

  it('moves what a fitted assembly is fitted to', () => {
    const held = [anEngine({ custodian: trimShop, host: shellId }), aShell({ custodian: trimShop })]
    expect(unmet(aStage(), 100, ...held)).toMatchObject([
      { entity: engineId, clearedWith: { input: { assemblies: [shellId] } } },
    ])
  })

  it('lets no two stages at an assembly that one of them wants for itself', () => {
    const busy = aStage({ assemblies: [shellId], state: 'in work', exclusive: false })
    expect(unmet({ ...wings, exclusive: true }, 100, busy)).toMatchObject([
      {
        rule: 'exclusive-use',
        entity: shellId,
        stage: busy.id,
        root: busy.id,
        concedable: false,
        clearedWith: { command: 'stage.end', input: { stage: busy.id } },
      },
    ])
    expect(unmet({ ...wings, exclusive: false }, 100, { ...busy, exclusive: true })).toHaveLength(1)
    expect(unmet({ ...wings, exclusive: false }, 100, busy)).toEqual([])
    expect(unmet(wings, 100, { ...busy, state: 'paused', exclusive: true })).toEqual([])
  })
})

describe('what must be fitted or off', () => {
  const door = anAssembly({ name: 'Door' })
  const trim = aStage({ assemblies: [shellId], needsFitted: [door.id], needsOff: [engineId] })

  it('names what is off and must be on, and what is on and must be off', () => {
    expect(unmet(trim, 100, door, anEngine({ host: shellId }))).toMatchObject([
      {
        rule: 'must-be-fitted',
        assembly: door.id,
        clearedWith: { command: 'assembly.fit', input: { assembly: door.id } },
      },
      {
        rule: 'must-be-off',
        assembly: engineId,
        clearedWith: { command: 'assembly.takeOff', input: { assembly: engineId } },
      },
    ])
    expect(unmet(trim, 100, { ...door, host: shellId })).toEqual([])
  })

  it('points to the stage that fits it, and to what keeps that', () => {
    const hang = aStage({ party: trimShop, host: shellId, fits: [door.id], assemblies: [door.id] })
    expect(unmet({ ...trim, needsOff: [] }, 100, door, hang)).toMatchObject([
      {
        rule: 'must-be-fitted',
        root: door.id,
        clearedBy: [trimShop],
        clearedWith: { command: 'stage.start', input: { stage: hang.id } },
      },
    ])
  })
})

describe('parts, yes and choice', () => {
  it('waits until a part has arrived and passed inspection', () => {
    const supplier = anId('pty', 'glass')
    const screen = aPart({ stages: [wings.id], state: 'ordered', supplier, orderedAt: at(2) })
    const promise = (n: number, day: string) => ({
      kind: 'promise' as const,
      id: anId('prm', `${n}`),
      project,
      part: screen.id,
      date: CivilDate.parse(day),
      by: supplier,
      madeAt: at(n),
      remark: '',
    })
    const promises = [promise(1, '2026-02-20'), promise(2, '2026-03-09')]
    expect(unmet(wings, 100, screen, ...promises)).toMatchObject([
      {
        rule: 'part',
        is: 'ordered',
        promised: '2026-03-09',
        promises: 2,
        since: at(2),
        clearedBy: [supplier, lead],
        clearedWith: { command: 'part.arrive', input: { part: screen.id } },
      },
    ])
    expect(unmet(wings, 100, { ...screen, state: 'arrived' })).toMatchObject([
      { is: 'arrived', clearedBy: [lead], clearedWith: { command: 'part.inspect' } },
    ])
    expect(unmet(wings, 100, { ...screen, state: 'inspected' })).toEqual([])
    expect(unmet(wings, 100, { ...screen, withdrawnAt: at(9) })).toEqual([])
  })

  it('waits for the yes of whoever pays, which is never conceded', () => {
    const order = aChangeOrder({ number: 7, party: engineShop })
    const extra = { ...wings, changeOrder: order.id }
    expect(unmet(extra, 100, order)).toMatchObject([
      {
        rule: 'change-order',
        number: 7,
        is: 'sent',
        since: at(1),
        concedable: false,
        clearedBy: [owner],
        clearedWith: { command: 'changeOrder.approve', input: { changeOrder: order.id } },
      },
    ])
    expect(unmet(extra, 100, { ...order, state: 'draft' })).toMatchObject([
      { clearedBy: [engineShop], clearedWith: { command: 'changeOrder.send' } },
    ])
    expect(unmet(extra, 100, { ...order, state: 'declined' })).toHaveLength(1)
    expect(unmet(extra, 100, { ...order, state: 'approved' })).toEqual([])
  })

  it('answers unknown where the change order may not be seen', () => {
    const order = aChangeOrder()
    const extra = { ...wings, changeOrder: order.id }
    const record = aRecord(aShell(), extra, order)
    const view = { ...record, changeOrders: withRows(record.changeOrders, [], [order.id]) }
    expect(startConditions(view, extra, at(100))).toMatchObject([
      { rule: 'unknown', entity: order.id },
    ])
  })

  it('waits for the decision, unless it is no longer asked', () => {
    const hoses = aDecision()
    const extra = { ...wings, decision: hoses.id }
    expect(unmet(extra, 100, hoses)).toMatchObject([
      { rule: 'decision', clearedBy: [owner], clearedWith: { command: 'decision.choose' } },
    ])
    expect(unmet(extra, 100, { ...hoses, state: 'chosen' })).toEqual([])
    expect(unmet(extra, 100, { ...hoses, state: 'withdrawn' })).toEqual([])
  })
})

describe('hold and witness points', () => {
  const link = aLink({ from: paint.id, to: wings.id })
  const hold = aHold({ stage: paint.id })
  const witness = aHold({ stage: paint.id, point: 'witness' })

  it('lets nobody pass a hold point before it is released, and never by concession', () => {
    expect(unmet(wings, 100, done(9), link, hold)).toMatchObject([
      {
        rule: 'hold',
        entity: hold.id,
        stage: paint.id,
        concedable: false,
        clearedBy: [owner],
        clearedWith: { command: 'hold.release', input: { hold: hold.id } },
      },
    ])
    expect(unmet(wings, 100, done(9), link, { ...hold, state: 'released' })).toEqual([])
    const visited = { ...hold, state: 'invited' as const, invitedAt: at(1), visitAt: at(50) }
    expect(unmet(wings, 100, done(9), link, visited)).toHaveLength(1)
  })

  it('asks that a witness is invited, and goes on when the visit has passed in silence', () => {
    expect(unmet(wings, 100, done(9), link, witness)).toMatchObject([
      { rule: 'hold', clearedBy: [lead], clearedWith: { command: 'hold.invite' } },
    ])
    const invited = {
      ...witness,
      state: 'invited' as const,
      invitedAt: at(20),
      visitAt: at(60),
      noticeDays: 1,
    }
    expect(unmet(wings, 59, done(9), link, invited)).toMatchObject([{ clearedBy: [owner] }])
    expect(unmet(wings, 60, done(9), link, invited)).toEqual([])
    expect(unmet(wings, 50, done(9), link, { ...invited, state: 'waived' })).toEqual([])
    // Invited on Tuesday at 04:00 with two working days' notice: waited for until Thursday at 04:00, though the visit was on Wednesday.
    const later = { ...invited, noticeDays: 2 }
    expect(unmet(wings, 67.9, done(9), link, later)).toMatchObject([{ rule: 'hold' }])
    expect(unmet(wings, 68, done(9), link, later)).toEqual([])
    // Over a weekend: invited on Friday at noon, on Tuesday at noon it has been two working days.
    const friday = { ...later, invitedAt: at(100), visitAt: at(110) }
    expect(unmet(wings, 195, done(9), link, friday)).toMatchObject([{ rule: 'hold' }])
    expect(unmet(wings, 196, done(9), link, friday)).toEqual([])
  })
})

describe('a concession', () => {
  const link = aLink({ from: paint.id, to: wings.id, leastLagHours: 48 })
  const concession = {
    kind: 'concession' as const,
    id: anId('con', 'one'),
    project,
    stage: wings.id,
    rule: 'least-lag',
    entity: link.id,
    reason: 'Nothing leans on it.',
    file: null,
    needs: [lead, trimShop],
    parties: [lead, trimShop],
    person: anId('psn', 'ada'),
    at: at(11),
    withdrawnAt: null,
  }

  it('takes out the condition that it accepts, once all who must have agreed', () => {
    expect(unmet(wings, 20, done(10), link, concession)).toEqual([])
    expect(unmet(wings, 20, done(10), link, { ...concession, parties: [lead] })).toHaveLength(1)
    expect(unmet(wings, 20, done(10), link, { ...concession, withdrawnAt: at(12) })).toHaveLength(1)
    expect(unmet(wings, 20, done(10), link, { ...concession, stage: paint.id })).toHaveLength(1)
  })

  it('never counts for safety work, not even one from before it was marked so', () => {
    expect(unmet({ ...wings, safety: true }, 20, done(10), link, concession)).toHaveLength(1)
  })
})
