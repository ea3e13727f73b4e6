import { describe, expect, it, test } from 'vitest'
import {
  aLink,
  anAssembly,
  aProject,
  aRecord,
  aShell,
  aStage,
  at,
  fresh,
  lead,
  owner,
  project,
  shellId,
} from '../../../test/builders.ts'
import type { AirReading } from '../../record/entities/evidence.ts'
import type { InDate, Milestone } from '../../record/entities/standing.ts'
import type { Stage } from '../../record/entities/work.ts'
import type { Entity } from '../../record/entity.ts'
import { CivilDate } from '../../record/scalars.ts'
import { startConditions } from '../start.ts'

// Gate rules 2, 8, 10 and 11 (DESIGN §4). FACTS of the trade stand beside the cases: B2, B6, C1–C8.

const spray = aStage({
  name: 'Colour on the shell',
  assemblies: [shellId],
  airAgeMost: 30,
  humidityMost: 85,
  surfaceLeast: 15,
  surfaceMost: 30,
})
const welded = aStage({ name: 'Weld the sills', assemblies: [shellId], hazards: ['hot work'] })
const base = [aProject(), aShell({ custodian: lead })]

const anAir = (over: Partial<AirReading> = {}): AirReading => ({
  kind: 'airReading',
  id: fresh('air'),
  project,
  stage: spray.id,
  party: lead,
  bay: null,
  air: 20,
  surface: 19,
  humidity: 60,
  takenAt: at(0),
  at: at(0),
  by: null,
  ...over,
})
const anInDate = (until: string, over: Partial<InDate> = {}): InDate => ({
  kind: 'inDate',
  id: fresh('ind'),
  project,
  party: lead,
  thing: 'lifting examination',
  name: 'Hoist',
  person: null,
  minutes: null,
  doneOn: CivilDate.parse('2025-10-01'),
  until: CivilDate.parse(until),
  by: fresh('psn'),
  at: at(0),
  withdrawnAt: null,
  ...over,
})
const aMilestone = (over: Partial<Milestone> = {}): Milestone => ({
  kind: 'milestone',
  id: fresh('mst'),
  project,
  stage: spray.id,
  party: lead,
  payer: owner,
  name: 'A third before colour',
  net: null,
  agreedAt: at(0),
  agreedBy: fresh('psn'),
  metAt: null,
  metBy: null,
  remark: '',
  removedAt: null,
  ...over,
})

const unmetOf = (stage: Stage, hours: number, ...entities: Entity[]) =>
  startConditions(aRecord(...base, stage, ...entities), stage, at(hours))

describe('air and surface (B2: at the panel, 3 °C over the dew point, not older than half an hour)', () => {
  test.each([
    ['never read', [], 0, 'missing'],
    ['read just now', [anAir()], 0, null],
    ['half an hour old, to the minute', [anAir()], 0.5, null],
    ['a minute older', [anAir()], 0.5 + 1 / 60, 'stale'],
    [
      '2.95 °C over the dew point, which shows as 3.0',
      [anAir({ air: 18, humidity: 70, surface: 15.4 })],
      0,
      'near dew point',
    ],
    ['damp, though far from the dew point', [anAir({ humidity: 86, surface: 29 })], 0, 'too damp'],
    ['exactly as damp as the sheet allows', [anAir({ humidity: 85, surface: 29 })], 0, null],
    ['a cold panel in dry air', [anAir({ humidity: 30, surface: 14.9 })], 0, 'too cold'],
    ['a hot panel', [anAir({ surface: 30.1 })], 0, 'too warm'],
    [
      'a good reading after a bad one',
      [anAir({ humidity: 95 }), anAir({ takenAt: at(0.1) })],
      0.2,
      null,
    ],
    [
      'a bad reading after a good one',
      [anAir(), anAir({ humidity: 95, takenAt: at(0.1) })],
      0.2,
      'near dew point',
    ],
  ] as const)('%s', (_, readings, hours, is) => {
    const found = unmetOf(spray, hours, ...readings)
    expect(found.map((one) => (one.rule === 'air' ? one.is : one.rule))).toEqual(
      is === null ? [] : [is],
    )
  })

  it('can’t be conceded unread: only a reading that is out can', () => {
    expect(unmetOf(spray, 0)[0]?.concedable).toBe(false)
    expect(unmetOf(spray, 0, anAir({ humidity: 86, surface: 29 }))[0]?.concedable).toBe(true)
    const safety = { ...spray, safety: true }
    expect(unmetOf(safety, 0, anAir({ humidity: 86, surface: 29 }))[0]?.concedable).toBe(false)
  })
})

describe('precautions (C1–C13), never conceded', () => {
  it('wants the tick of a stage with a hazard, and of no other', () => {
    expect(unmetOf(welded, 0)).toMatchObject([
      { rule: 'precautions', concedable: false, clearedWith: { command: 'stage.precautions' } },
    ])
    expect(unmetOf({ ...welded, precautionsAt: at(0) }, 0)).toEqual([])
    expect(unmetOf({ ...welded, hazards: [] }, 0)).toEqual([])
  })

  it('refuses hot work while what holds fuel is on the car (C4), whoever concedes it', () => {
    const ticked: Stage = { ...welded, precautionsAt: at(0) }
    const tank = anAssembly({ name: 'Fuel tank', holdsFuel: true, host: shellId })
    expect(unmetOf(ticked, 0, tank)).toMatchObject([
      { rule: 'must-be-off', entity: tank.id, concedable: false },
    ])
    expect(unmetOf(ticked, 0, { ...tank, host: null })).toEqual([])
    expect(unmetOf(ticked, 0, { ...tank, holdsFuel: false })).toEqual([])
  })
})

describe('what must be in date (C2, C3, C8), never conceded', () => {
  const lift: Stage = { ...welded, hazards: [], inDate: ['lifting examination'] }
  // The tests' calendar begins on 2 March 2026.
  test.each([
    ['nothing entered', [], false],
    ['through today', [anInDate('2026-03-02')], true],
    ['through yesterday', [anInDate('2026-03-01')], false],
    ['an old one and a new one', [anInDate('2026-03-01'), anInDate('2027-01-01')], true],
    ['of another party', [anInDate('2027-01-01', { party: owner })], false],
    ['of another thing', [anInDate('2027-01-01', { thing: 'torque wrench' })], false],
    ['taken back', [anInDate('2027-01-01', { withdrawnAt: at(0) })], false],
  ] as const)('%s', (_, entities, passes) => {
    const found = unmetOf(lift, 1, ...entities)
    expect(found.map(({ rule, concedable }) => [rule, concedable])).toEqual(
      passes ? [] : [['in-date', false]],
    )
  })
})

describe('an agreed payment (rule 11)', () => {
  test('holds its stage until who is paid says that it has come, or it is withdrawn', () => {
    const plain: Stage = { ...spray, airAgeMost: null }
    const one = aMilestone()
    expect(unmetOf(plain, 0, one)).toMatchObject([
      { rule: 'milestone', entity: one.id, concedable: true },
    ])
    expect(unmetOf(plain, 0, { ...one, metAt: at(0) })).toEqual([])
    expect(unmetOf(plain, 0, { ...one, removedAt: at(0) })).toEqual([])
  })
})

describe('a recoat window that ran out (B6, B7)', () => {
  // Ended at 2 h, signed off a day later: the window counts from the last coat, never from the signature.
  const colour = aStage({
    name: 'Colour',
    assemblies: [shellId],
    state: 'signed off',
    startedAt: at(0),
    endedAt: at(2),
    signedOffAt: at(26),
  })
  const lacquer: Stage = { ...spray, airAgeMost: null, name: 'Lacquer' }
  const window = aLink({ from: colour.id, to: lacquer.id, greatestLagHours: 24 })

  test('counts from the end of work, and names the keying stage that one press puts in', () => {
    expect(unmetOf(lacquer, 26, colour, window)).toEqual([])
    expect(unmetOf(lacquer, 26.1, colour, window)).toMatchObject([
      {
        rule: 'greatest-lag',
        clearedWith: { command: 'stage.insertKeying', input: { link: window.id } },
      },
    ])
  })

  test('is not stretched by a late signature', () => {
    const late: Stage = { ...colour, signedOffAt: at(200) }
    expect(unmetOf(lacquer, 26.1, late, window)).toHaveLength(1)
  })
})
