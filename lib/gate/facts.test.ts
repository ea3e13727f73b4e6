import { describe, expect, it } from 'vitest'
import {
  aHold,
  aLink,
  anActor,
  anAssembly,
  anId,
  aRecord,
  aShell,
  aStage,
  at,
  lead,
  owner,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import { aCoat } from '../../test/coating-builders.ts'
import { press, pressed } from '../../test/press.ts'
import type { Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import { conditionConcede } from './condition-concede.ts'
import { startConditions } from './start.ts'

// FACTS of the trade as they happen in a shop; the row stands before each case.

const unmet = (stage: Stage, when: number, ...entities: Entity[]) =>
  startConditions(aRecord(aShell(), stage, ...entities), stage, at(when))
const done = (name: string, endedAt: number, over: Partial<Stage> = {}): Stage =>
  aStage({
    name,
    assemblies: [shellId],
    state: 'signed off',
    startedAt: at(0),
    endedAt: at(endedAt),
    signedOffAt: at(endedAt),
    ...over,
  })

describe('order of work', () => {
  const glass = anAssembly({ id: anId('asm', 'screen'), name: 'Windscreen' })
  const dash = anAssembly({ id: anId('asm', 'dash'), name: 'Dash' })
  const engine = anAssembly({ id: anId('asm', 'lump'), name: 'Engine' })
  const inCar = <T extends { host: unknown }>(thing: T) => ({ ...thing, host: shellId })

  it('A1: headlining goes into the empty shell, and is refused once glass or dash is in', () => {
    const head = aStage({
      name: 'Headlining',
      assemblies: [shellId],
      needsOff: [glass.id, dash.id],
    })
    expect(unmet(head, 10, glass, dash)).toEqual([])
    expect(unmet(head, 10, glass, inCar(dash))).toMatchObject([
      { rule: 'must-be-off', assembly: dash.id, clearedWith: { command: 'assembly.takeOff' } },
    ])
    expect(unmet(head, 10, inCar(glass), inCar(dash))).toHaveLength(2)
  })

  it('A2: the screen waits for the headlining', () => {
    const head = aStage({ name: 'Headlining', assemblies: [], party: trimShop })
    const screen = aStage({ name: 'Screen in', assemblies: [shellId] })
    const link = aLink({ from: head.id, to: screen.id })
    expect(unmet(screen, 10, head, link)).toMatchObject([
      { rule: 'predecessor', stage: head.id, clearedBy: [trimShop] },
    ])
  })

  it('A3: wings are not hung before the engine is in, unless both concede it in writing', () => {
    const wings = aStage({ name: 'Wings hung', assemblies: [shellId], needsFitted: [engine.id] })
    expect(unmet(wings, 10, inCar(engine))).toEqual([])
    const record = aRecord(aShell(), engine, wings)
    expect(startConditions(record, wings, at(10))).toMatchObject([
      { rule: 'must-be-fitted', assembly: engine.id, concedable: true },
    ])
    const input = { stage: wings.id, rule: 'must-be-fitted', entity: engine.id }
    const because = { ...input, reason: 'The bay is empty; edges are padded.' }
    const conceded = pressed(conditionConcede, anActor(lead), record, because)
    expect(startConditions(conceded, wings, at(10))).toEqual([])
    expect(press(conditionConcede, anActor(lead), record, { ...input, reason: ' ' })).toMatchObject(
      { outcome: 'invalid' },
    )
  })

  it('A3: an engine lifted out again holds up the wings again', () => {
    const wings = aStage({ name: 'Wings hung', assemblies: [shellId], needsFitted: [engine.id] })
    expect(unmet(wings, 10, engine)).toMatchObject([{ rule: 'must-be-fitted' }])
  })

  it('A8: no seam sealer before the welds are looked at by the party named', () => {
    const weld = done('Weld', 9)
    const sealer = aStage({ name: 'Seam sealer', assemblies: [shellId] })
    const link = aLink({ from: weld.id, to: sealer.id })
    const seen = aHold({ stage: weld.id, name: 'Welds seen', party: owner })
    expect(unmet(sealer, 10, weld, link, seen)).toMatchObject([
      { rule: 'hold', clearedBy: [owner], concedable: false },
    ])
    expect(unmet(sealer, 10, weld, link, { ...seen, state: 'released' })).toEqual([])
  })
})

describe('paint', () => {
  const colour = done('Colour', 10, { signedOffAt: at(60) })
  const lacquer = aStage({ name: 'Lacquer', assemblies: [shellId] })
  const window = aLink({
    from: colour.id,
    to: lacquer.id,
    leastLagHours: 0.5,
    greatestLagHours: 24,
  })

  it('B6, B7: no lacquer before the colour has flashed, nor after the window; a late signature stretches neither', () => {
    const rules = (when: number) => unmet(lacquer, when, colour, window).map(({ rule }) => rule)
    expect(rules(10.4)).toEqual(['least-lag'])
    expect(rules(10.5)).toEqual([])
    expect(rules(34)).toEqual([])
    expect(rules(34.1)).toEqual(['greatest-lag'])
    expect(unmet(lacquer, 61, colour, window)).toMatchObject([
      {
        rule: 'greatest-lag',
        ranOutAt: at(34),
        clearedWith: { command: 'stage.insertKeying', input: { link: window.id } },
      },
    ])
  })

  it('B6: the window runs from the last coat, though masking off took until the next day', () => {
    const masked = { ...colour, endedAt: at(30) }
    const coat = aCoat({ stage: colour.id, product: 'colour', endedAt: at(8) })
    expect(unmet(lacquer, 32, masked, window, coat)).toEqual([])
    expect(unmet(lacquer, 33, masked, window, coat)).toMatchObject([
      { rule: 'greatest-lag', ranOutAt: at(32) },
    ])
  })

  it('B9, B10: lacquer is not polished before it has cured by the metal’s own temperature', () => {
    const polish = aStage({ name: 'Polish', assemblies: [shellId] })
    const shot = done('Lacquer on', 10)
    const cure = aLink({ from: shot.id, to: polish.id, leastLagHours: 48, curesAt: 20 })
    const night = {
      kind: 'metalReading' as const,
      id: anId('mtl', 'night'),
      project: shot.project,
      stage: shot.id,
      celsius: 10,
      takenAt: at(10),
      at: at(10),
      by: null,
    }
    expect(unmet(polish, 58, shot, cure)).toEqual([])
    expect(unmet(polish, 58, shot, cure, night)).toMatchObject([
      { rule: 'least-lag', until: at(106) },
    ])
  })
})

describe('people and hazards', () => {
  const tank = anAssembly({ id: anId('asm', 'tank'), name: 'Fuel tank', holdsFuel: true })
  const weld = aStage({
    name: 'Sills',
    assemblies: [shellId],
    hazards: ['hot work'],
    precautionsAt: at(1),
  })

  it('C4: no hot work while the tank is on, by anybody’s leave; the stage that takes it off is named', () => {
    const off = aStage({ name: 'Tank out', assemblies: [], removes: [tank.id] })
    expect(unmet(weld, 10, { ...tank, host: shellId }, off)).toMatchObject([
      {
        rule: 'must-be-off',
        assembly: tank.id,
        concedable: false,
        clearedWith: { command: 'stage.start', input: { stage: off.id } },
      },
    ])
    expect(unmet(weld, 10, tank)).toEqual([])
  })

  it('C13: the first start waits for its ticks, anew after it was opened again', () => {
    const start = aStage({
      name: 'First start',
      assemblies: [shellId],
      hazards: ['rotating parts', 'fuel'],
    })
    expect(unmet(start, 10)).toMatchObject([{ rule: 'precautions', concedable: false }])
    expect(unmet({ ...start, precautionsAt: at(9) }, 10)).toEqual([])
  })
})

describe('record', () => {
  it('E1: silence past the notice lets a witness point pass, never a hold point', () => {
    const primed = done('Primed', 9)
    const block = aStage({ name: 'Block', assemblies: [shellId] })
    const link = aLink({ from: primed.id, to: block.id })
    const invited = { state: 'invited' as const, invitedAt: at(1), visitAt: at(50) }
    const point = (over: object) => aHold({ stage: primed.id, ...invited, ...over })
    expect(unmet(block, 60, primed, link, point({ point: 'witness' }))).toEqual([])
    expect(unmet(block, 600, primed, link, point({ point: 'hold' }))).toMatchObject([
      { rule: 'hold', point: 'hold', clearedWith: { command: 'hold.release' } },
    ])
  })

  it('E3: all reasons stand at once', () => {
    const before = aStage({ name: 'Colour', assemblies: [] })
    const next = aStage({
      name: 'Lacquer',
      assemblies: [shellId],
      hazards: ['isocyanate'],
      airAgeMost: 30,
      inDate: ['booth clearance'],
      needsBay: true,
    })
    const link = aLink({ from: before.id, to: next.id })
    expect(unmet(next, 10, before, link).map(({ rule }) => rule)).toEqual([
      'predecessor',
      'slot',
      'in-date',
      'air',
      'precautions',
    ])
  })
})
