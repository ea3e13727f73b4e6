import { describe, expect, it } from 'vitest'
import {
  aLink,
  anActor,
  aRecord,
  aShell,
  aStage,
  at,
  fresh,
  lead,
  project,
  shellId,
} from '../../test/builders.ts'
import { press } from '../../test/press.ts'
import { cureEnds } from '../gate/cure-ends.ts'
import { startConditions } from '../gate/start.ts'
import type { MetalReading } from '../record/entities/evidence.ts'
import { metalRecord } from './metal-record.ts'

// FACTS B9, B10; BENCH f: with a log the sum of dt ÷ t(T) must reach 1, t doubling with every 10 °C colder. It only lengthens.

const coat = aStage({
  assemblies: [shellId],
  state: 'signed off',
  startedAt: at(0),
  endedAt: at(2),
  signedOffAt: at(40),
})
const metal = (celsius: number, hours: number): MetalReading => ({
  kind: 'metalReading',
  id: fresh('mtl'),
  project,
  stage: coat.id,
  celsius,
  takenAt: at(hours),
  at: at(hours),
  by: null,
})

describe('a cure by the metal’s temperature', () => {
  const ends = (...log: MetalReading[]) => cureEnds(at(2), 48, 20, log)

  it('runs by the clock from the end of work where nothing is logged', () => {
    expect(ends()).toEqual({ until: at(50), metal: null })
  })

  it('takes twice as long with metal ten degrees colder than the sheet’s', () => {
    expect(ends(metal(10, 1))).toEqual({ until: at(98), metal: 10 })
  })

  it('counts each spell for itself: 24 h warm are half of it, the other half takes 48 h in the cold', () => {
    expect(ends(metal(20, 2), metal(10, 26))).toEqual({ until: at(74), metal: 10 })
  })

  it('is never shorter than by the clock, however warm the metal', () => {
    expect(ends(metal(40, 1)).until).toBe(at(50))
    expect(ends(metal(10, 2), metal(60, 26)).until).toBe(at(62))
  })

  it('has no end under 10 °C, and goes on once the metal is warm again', () => {
    expect(ends(metal(9.9, 12))).toEqual({ until: null, metal: 9.9 })
    expect(ends(metal(9.9, 12), metal(20, 36)).until).toBe(at(74))
  })

  it('goes by the clock where the link is no cure', () => {
    expect(cureEnds(at(2), 48, null, [metal(5, 2)])).toEqual({ until: at(50), metal: null })
  })
})

describe('the gate before a stage that waits for a cure', () => {
  const polish = aStage({ name: 'Polish', assemblies: [shellId] })
  const link = aLink({ from: coat.id, to: polish.id, leastLagHours: 48, curesAt: 20 })
  const lag = (when: number, ...log: MetalReading[]) =>
    startConditions(aRecord(aShell(), coat, polish, link, ...log), polish, at(when))

  it('waits longer after a cold night, and says until when', () => {
    expect(lag(60)).toEqual([])
    expect(lag(60, metal(10, 26))).toMatchObject([
      { rule: 'least-lag', until: at(74), metal: 10, clearedBy: [] },
    ])
    expect(lag(74, metal(10, 26))).toEqual([])
  })

  it('asks for warmth and a new reading while the metal is too cold to cure', () => {
    expect(lag(200, metal(6, 10))).toMatchObject([
      {
        rule: 'least-lag',
        until: null,
        clearedBy: [lead],
        clearedWith: { command: 'metal.record', input: { stage: coat.id } },
      },
    ])
  })

  it('can’t be conceded where the link is safety work', () => {
    const record = aRecord(aShell(), coat, polish, { ...link, safety: true })
    expect(startConditions(record, polish, at(10))).toMatchObject([{ concedable: false }])
  })
})

describe('metal.record', () => {
  const record = aRecord(aShell(), coat)
  const input = { stage: coat.id, metal: 50, degrees: '°F' }

  it('keeps °F as °C', () => {
    expect(press(metalRecord, anActor(lead), record, input)).toMatchObject({
      outcome: 'changes',
      entities: [{ kind: 'metalReading', celsius: 10 }],
    })
  })

  it('refuses a reading from the future, metal hotter than any oven, and work that hasn’t begun', () => {
    const wrong = (over: object, stage = coat) =>
      press(metalRecord, anActor(lead), aRecord(aShell(), stage), { ...input, ...over })
    expect(wrong({ takenAt: at(101) })).toMatchObject({ conditions: [{ rule: 'time' }] })
    expect(wrong({ metal: 500 })).toMatchObject({ conditions: [{ field: 'metal' }] })
    expect(wrong({}, { ...coat, state: 'planned', endedAt: null })).toMatchObject({
      conditions: [{ rule: 'state', is: 'planned' }],
    })
  })
})
