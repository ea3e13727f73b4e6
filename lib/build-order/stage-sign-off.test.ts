import { describe, expect, it } from 'vitest'
import {
  aCheck,
  aHandover,
  aLink,
  anActor,
  anEngine,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  project,
  shellId,
} from '../../test/builders.ts'
import { press } from '../../test/press.ts'
import type { Entity } from '../record/entity.ts'
import { stageSignOff } from './stage-sign-off.ts'

const ready = aStage({
  name: 'Ready to fit',
  party: engineShop,
  state: 'ended',
  startedAt: at(10),
  endedAt: at(60),
  handoverTo: lead,
})
const engine = anEngine({ custodian: engineShop })
const wyn = anActor(engineShop, { role: 'hand' })
const oil = aCheck({ stage: ready.id, type: 'reading', least: 3.1, greatest: 4.5 })
const conceded = {
  kind: 'concession' as const,
  id: anId('con', 'oil'),
  project,
  stage: ready.id,
  rule: 'check',
  entity: oil.id,
  reason: 'Within the maker’s own limit.',
  file: null,
  needs: [engineShop, lead],
  parties: [engineShop, lead],
  person: anId('psn', 'ada'),
  at: at(70),
  withdrawnAt: null,
}
const signOff = (input: object, ...entities: Entity[]) =>
  press(stageSignOff, wyn, aRecord(entities), { stage: ready.id, ...input })

describe('stage.signOff', () => {
  it('declares the stage done and prepares the handover with which it ends', () => {
    expect(signOff({}, ready, engine)).toMatchObject({
      outcome: 'changes',
      entities: [
        { kind: 'stage', state: 'signed off', signedOffAt: at(100), endedAt: at(60) },
        { kind: 'signOff', type: 'sign-off', party: engineShop, person: wyn.person },
        {
          kind: 'handover',
          state: 'prepared',
          from: engineShop,
          to: lead,
          assemblies: [engineId],
          stage: ready.id,
        },
      ],
    })
  })

  it('prepares no second handover where one is under way, and none where none is due', () => {
    for (const record of [
      [ready, engine, aHandover()],
      [ready, engine, aHandover({ state: 'released' })],
      [{ ...ready, handoverTo: null }, engine],
      [{ ...ready, handoverTo: engineShop }, engine],
    ]) {
      const signed = signOff({}, ...record)
      expect(signed.outcome === 'changes' && signed.entities.map(({ kind }) => kind)).toEqual([
        'stage',
        'signOff',
      ])
    }
    const again = signOff({}, ready, engine, aHandover({ state: 'refused' }))
    expect(again).toMatchObject({ entities: [{}, {}, { kind: 'handover', state: 'prepared' }] })
  })

  it('does not name what it fitted: that goes with its host', () => {
    const fitted = { ...ready, assemblies: [shellId, engineId], host: shellId, fits: [engineId] }
    const shell = aShell({ custodian: engineShop })
    expect(
      signOff({ end: { endedAt: at(60) } }, { ...fitted, state: 'in work' }, shell, engine),
    ).toMatchObject({
      entities: [
        {},
        {},
        { id: engineId, host: shellId },
        { kind: 'handover', assemblies: [shellId] },
      ],
    })
  })

  it('needs the end of work, and takes it in the same press', () => {
    const inWork = { ...ready, state: 'in work' as const, endedAt: null }
    expect(signOff({}, inWork, engine)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'no-end', is: 'in work', clearedWith: { command: 'stage.end' } }],
    })
    expect(signOff({ end: { endedAt: at(99) } }, inWork, engine)).toMatchObject({
      outcome: 'changes',
      entities: [{ state: 'signed off', endedAt: at(99), endedBy: wyn.person }, {}, {}],
    })
    expect(signOff({ end: { endedAt: at(9) } }, inWork, engine)).toMatchObject({
      conditions: [{ rule: 'time', why: 'before the start' }],
    })
  })

  it('never moves an end that stands: that is a command of its own, with a reason', () => {
    expect(signOff({ end: { endedAt: at(61) } }, ready, engine)).toMatchObject({
      outcome: 'refusal',
      conditions: [{ rule: 'state', clearedWith: { command: 'stage.correctEnd' } }],
    })
    expect(signOff({ end: { endedAt: at(60) } }, ready, engine)).toMatchObject({
      outcome: 'changes',
    })
  })

  it('refuses while a check is missing or out of limits, and names each', () => {
    const photo = aCheck({ stage: ready.id, type: 'photo' })
    const record = [ready, engine, { ...oil, state: 'out of limits' as const, value: 4.6 }, photo]
    expect(signOff({}, ...record)).toMatchObject({
      outcome: 'refusal',
      conditions: [
        {
          rule: 'check',
          entity: oil.id,
          is: 'out of limits',
          clearedBy: [engineShop],
          clearedWith: { command: 'check.record', input: { check: oil.id } },
        },
        { rule: 'check', entity: photo.id, is: 'missing' },
      ],
    })
    expect(signOff({}, ready, engine, { ...photo, removedAt: at(1) })).toMatchObject({
      outcome: 'changes',
    })
  })

  it('accepts a conceded reading, but never on safety work', () => {
    const amiss = { ...oil, state: 'out of limits' as const, value: 4.6 }
    expect(signOff({}, ready, engine, amiss, conceded)).toMatchObject({ outcome: 'changes' })
    expect(signOff({}, { ...ready, safety: true }, engine, amiss, conceded)).toMatchObject({
      conditions: [{ rule: 'check', concedable: false }],
    })
    const half = { ...conceded, parties: [engineShop] }
    expect(signOff({}, ready, engine, amiss, half)).toMatchObject({ outcome: 'refusal' })
  })

  it('stands in doubt where what it relied on was reopened while it was in work', () => {
    const before = aStage({ state: 'reopened', doubt: 'It has sunk.', assemblies: [] })
    const link = aLink({ from: before.id, to: ready.id })
    expect(signOff({}, ready, engine, before, link)).toMatchObject({
      entities: [
        { state: 'in doubt', doubt: 'It has sunk.', signedOffAt: at(100) },
        { kind: 'signOff', type: 'sign-off' },
        { kind: 'handover' },
      ],
    })
  })

  it('is never told by phone: only its party signs', () => {
    const record = aRecord(ready, engine)
    expect(press(stageSignOff, anActor(lead), record, { stage: ready.id }).outcome).toBe(
      'forbidden',
    )
    expect(
      press(stageSignOff, anActor(lead), record, { stage: ready.id, told: engineShop }).outcome,
    ).toBe('invalid')
  })
})
