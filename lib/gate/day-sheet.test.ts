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
  aParty,
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
import { aSlot } from '../../test/shop-builders.ts'
import type { Role } from '../record/actor.ts'
import { CivilDate } from '../record/scalars.ts'
import { daySheet } from './day-sheet.ts'
import { mayPress } from './may-press.ts'

const order = aChangeOrder({ number: 7 })
const strip = aStage({ number: 41, party: engineShop, assemblies: [anId('asm', 'gearbox')] })
const ready = aStage({ number: 38, party: engineShop, state: 'in work', startedAt: at(50) })
const mounts = aStage({
  number: 39,
  party: engineShop,
  assemblies: [],
  changeOrder: order.id,
})
const coat = aStage({ assemblies: [], state: 'signed off', endedAt: at(90), signedOffAt: at(90) })
const assemble = aStage({ number: 40, party: engineShop, assemblies: [] })
const car = [
  aShell(),
  anEngine({ custodian: engineShop }),
  anAssembly({ id: anId('asm', 'gearbox'), custodian: engineShop }),
  order,
  strip,
  ready,
  mounts,
  coat,
  assemble,
]
const cure = aLink({ from: coat.id, to: assemble.id, leastLagHours: 24 })
const record = aRecord(car, cure)
const sheet = (party: typeof lead, of = record) => daySheet([{ record: of, party }], at(100))

describe('the day sheet of a shop', () => {
  it('names what can start and what is in work, by number', () => {
    const { start, inWork } = sheet(engineShop)
    expect(start).toEqual([{ project, stage: strip.id, status: 'ready' }])
    expect(inWork).toEqual([{ project, stage: ready.id, status: 'in work' }])
    expect(sheet(trimShop).start).toEqual([])
  })

  it('names what waits, on whom in the end, or until when on the clock', () => {
    expect(sheet(engineShop).waits).toMatchObject([
      { stage: mounts.id, status: 'held', on: [owner], until: null, root: order.id },
      { stage: assemble.id, status: 'waiting', on: [], until: at(114) },
    ])
  })

  it('puts the slot that the shop has yet to claim before the custody that another owes it', () => {
    const headlining = aStage({ party: trimShop, assemblies: [shellId], needsBay: true })
    const done = aLink({ from: coat.id, to: headlining.id })
    expect(sheet(trimShop, aRecord(car, headlining, done)).waits).toMatchObject([
      { stage: headlining.id, on: [trimShop], cause: { rule: 'slot' } },
    ])
    const early = aLink({ from: ready.id, to: headlining.id })
    expect(sheet(trimShop, aRecord(car, headlining, early)).waits).toMatchObject([
      { stage: headlining.id, on: [engineShop] },
    ])
  })

  it('goes over all projects of the shop', () => {
    const both = [
      { record, party: engineShop },
      { record, party: engineShop },
    ]
    expect(daySheet(both, at(100)).start).toHaveLength(2)
  })

  it('names who waits on us, longest first, with the press that does it', () => {
    const handover = aHandover({ preparedAt: at(30) })
    const released = aHandover({
      from: lead,
      to: engineShop,
      state: 'released',
      releasedAt: at(40),
    })
    const hold = aHold({ stage: coat.id, party: engineShop, setAt: at(20) })
    const early = aHold({ stage: strip.id, party: engineShop })
    const draft = aChangeOrder({ state: 'draft', number: 8, raisedAt: at(60) })
    const asked = aStage({
      ...coat,
      id: anId('stg', 'asked'),
      countersigns: [engineShop],
      signedOffAt: at(70),
    })
    const lines = sheet(
      engineShop,
      aRecord(car, handover, released, hold, early, draft, asked),
    ).onUs
    expect(lines.map(({ kind, entity, for: who }) => [kind, entity, who])).toEqual([
      ['hold', hold.id, lead],
      ['release', handover.id, lead],
      ['receive', released.id, lead],
      ['send change order', draft.id, null],
      ['countersign', asked.id, lead],
    ])
    expect(lines.map(({ press }) => press.command)).toEqual([
      'hold.release',
      'handover.release',
      'handover.receive',
      'changeOrder.send',
      'stage.countersign',
    ])
  })

  it('gives an ask until its condition is met', () => {
    const fit = aStage({ assemblies: [engineId] })
    const ask = {
      kind: 'ask' as const,
      id: anId('ask', 'engine'),
      project,
      stage: fit.id,
      rule: 'custody',
      entity: engineId,
      from: lead,
      to: engineShop,
      text: '',
      person: anId('psn', 'ada'),
      at: at(10),
      closedAt: null,
    }
    expect(sheet(engineShop, aRecord(car, fit, ask)).onUs).toMatchObject([
      { kind: 'ask', entity: ask.id, for: lead, press: { command: 'handover.prepare' } },
    ])
    const met = aRecord(car, fit, ask, anEngine({ custodian: lead }))
    expect(sheet(engineShop, met).onUs).toEqual([])
  })

  it('gives the owner and the lead what they have to answer', () => {
    const choice = aDecision()
    const slot = aSlot({ state: 'asked', party: trimShop, from: at(110), to: at(130) })
    const behind = aChangeOrder({ party: trimShop, number: 9 })
    const all = aRecord(car, choice, slot, behind, aParty({ id: trimShop, bills: 'lead' }))
    expect(sheet(owner, all).onUs.map(({ kind, entity }) => [kind, entity])).toEqual([
      ['choose', choice.id],
      ['answer change order', order.id],
    ])
    expect(sheet(lead, all).onUs.map(({ kind, entity }) => [kind, entity])).toEqual([
      ['agree slot', slot.id],
      ['answer change order', behind.id],
    ])
  })

  it('names what is coming, with the last of its promises', () => {
    const fitted = aStage({ party: engineShop, handoverTo: lead, assemblies: [engineId] })
    const screen = aPart({ state: 'ordered', supplier: trimShop })
    const promise = {
      kind: 'promise' as const,
      id: anId('prm', 'one'),
      project,
      part: screen.id,
      date: CivilDate.parse('2026-03-09'),
      by: trimShop,
      madeAt: at(1),
      remark: '',
    }
    const gearbox = aHandover({ assemblies: [anId('asm', 'gearbox')] })
    expect(sheet(lead, aRecord(car, fitted, screen, promise, gearbox)).coming).toMatchObject([
      { kind: 'handover', entity: gearbox.id, from: engineShop },
      { kind: 'assembly', entity: engineId, stage: fitted.id, from: engineShop },
      { kind: 'part', entity: screen.id, promised: '2026-03-09', promises: 1 },
    ])
    expect(sheet(lead, aRecord(car, aHandover(), fitted)).coming).toHaveLength(1)
  })

  it('asks to confirm what the lead entered by phone', () => {
    const told = {
      kind: 'told' as const,
      id: anId('tld', 'one'),
      project,
      entity: ready.id,
      party: engineShop,
      command: 'stage.start',
      person: anId('psn', 'ada'),
      at: at(50),
      confirmedAt: null,
      confirmedBy: null,
    }
    expect(sheet(engineShop, aRecord(car, told)).told).toMatchObject([
      { told: told.id, entity: ready.id, command: 'stage.start' },
    ])
    expect(sheet(lead, aRecord(car, told)).told).toEqual([])
    expect(sheet(engineShop, aRecord(car, { ...told, confirmedAt: at(60) })).told).toEqual([])
  })

  it('keeps the shell out of what comes while it is ours already', () => {
    const back = aStage({ party: trimShop, handoverTo: lead, assemblies: [shellId] })
    expect(sheet(lead, aRecord(car, back)).coming).toEqual([])
  })
})

describe('what others wait for from a shop', () => {
  const draft = aChangeOrder({ state: 'draft', number: 8 })
  const handover = aHandover()
  const lines = sheet(engineShop, aRecord(car, draft, handover)).onUs
  const pressable = (role: Role) =>
    lines.filter((line) => mayPress(line.press.command, role)).map(({ kind }) => kind)

  it('lets a hand release what is due, and leaves a price to the managers', () => {
    expect(pressable('manager')).toEqual(['release', 'send change order'])
    expect(pressable('hand')).toEqual(['release'])
  })
})
