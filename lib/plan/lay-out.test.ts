import { describe, expect, it } from 'vitest'
import { aCarOfStages } from '../../test/a-car-of-stages.ts'
import {
  aLink,
  anEngine,
  anId,
  aPart,
  aRecord as aRecordOf,
  aStage,
  at,
  fresh,
  lead,
  project,
  shellId,
  trimShop,
} from '../../test/builders.ts'
import type { PartPromise, Slot } from '../record/entities/things.ts'
import type { Entity } from '../record/entity.ts'
import { CivilDate } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { layOut } from './lay-out.ts'

// Monday 2 March 2026, 08:00. Nobody's own hours are known here: everyone works from 08:00 to 17:00.
const NOW = at(0)
const aRecord = (...entities: readonly Entity[]) =>
  aRecordOf(anEngine({ custodian: lead }), ...entities)
const id = (name: string) => anId('stg', name)
const laid = (record: ReturnType<typeof aRecord>, name: string, now = NOW) =>
  layOut(record, [], now).stages.get(`stg_${name}`) ?? expect.fail(`no ${name}`)

describe('the build order along the days', () => {
  it('leaves what is over where it was, and lets cure run from the end of its work', () => {
    const lacquer = aStage({
      id: id('lacquer'),
      state: 'signed off',
      startedAt: at(-72),
      endedAt: at(-66),
      signedOffAt: at(-1),
    })
    const polish = aStage({ id: id('polish'), hoursLikely: 9 })
    const record = aRecord(
      lacquer,
      polish,
      aLink({ from: lacquer.id, to: polish.id, leastLagHours: 96 }),
    )
    expect(laid(record, 'lacquer')).toMatchObject({
      tense: 'over',
      from: at(-72),
      to: at(-66),
      floatDays: null,
      onRun: false,
    })
    // 96 h from Friday 14:00 end on Tuesday at 14:00; three hours are left of that day.
    expect(laid(record, 'polish')).toMatchObject({
      tense: 'to come',
      from: at(30),
      to: at(54),
      waitsFor: { kind: 'stage', stage: lacquer.id },
    })
  })

  it('gives what is in work the rest of its hours from now', () => {
    const begun = aStage({ id: id('begun'), state: 'in work', startedAt: at(-72), hoursLikely: 12 })
    const record = aRecord(begun)
    // 9 of 12 hours are worked on Friday.
    expect(laid(record, 'begun')).toMatchObject({ tense: 'begun', from: at(-72), to: at(3) })
  })

  it('lets nothing that is in work end before now, however long it takes already', () => {
    const begun = aStage({ id: id('begun'), state: 'in work', startedAt: at(-240), hoursLikely: 2 })
    expect(laid(aRecord(begun), 'begun', at(2)).to).toBe(at(2))
  })

  it('counts no pause as work', () => {
    const paused = aStage({
      id: id('paused'),
      state: 'paused',
      startedAt: at(-72),
      pausedAt: at(-69),
      hoursLikely: 12,
    })
    expect(laid(aRecord(paused), 'paused').to).toBe(at(9))
  })

  it('draws one working day where nobody has given hours, and says so', () => {
    expect(laid(aRecord(aStage({ id: id('a') })), 'a')).toMatchObject({
      from: NOW,
      to: at(9),
      hoursUnknown: true,
    })
  })

  it('holds a stage back to the day promised last for its part', () => {
    const glass = aStage({ id: id('glass'), hoursLikely: 9 })
    const part = aPart({ stages: [glass.id], state: 'ordered', orderedAt: at(-500) })
    const promise = (date: string, hours: number): PartPromise => ({
      kind: 'promise',
      id: fresh('prm'),
      project,
      part: part.id,
      date: CivilDate.parse(date),
      by: lead,
      madeAt: at(hours),
      remark: '',
    })
    const record = aRecord(glass, part, promise('2026-03-06', -400), promise('2026-03-18', -20))
    expect(laid(record, 'glass')).toMatchObject({
      from: at(16 * 24),
      undated: false,
      waitsFor: { kind: 'part', part: part.id },
    })
  })

  it('draws what waits for a part that nobody has promised as if it came now, and says so', () => {
    const glass = aStage({ id: id('glass') })
    const record = aRecord(glass, aPart({ stages: [glass.id] }))
    expect(laid(record, 'glass')).toMatchObject({ from: NOW, undated: true })
  })

  it('holds a stage back to its agreed slot, and to none that is only asked for', () => {
    const trim = aStage({ id: id('trim'), party: trimShop, hoursLikely: 9 })
    const slot: Slot = {
      kind: 'slot',
      id: fresh('slt'),
      project,
      shop: anId('shp', 'lead'),
      bay: anId('bay', 'trim'),
      assembly: shellId,
      stage: trim.id,
      party: trimShop,
      from: at(48),
      to: at(57),
      state: 'agreed',
      askedAt: at(-10),
      agreedAt: at(-10),
      agreedBy: lead,
      window: null,
      reason: null,
    }
    expect(laid(aRecord(trim, slot), 'trim')).toMatchObject({
      from: at(48),
      to: at(57),
      waitsFor: { kind: 'slot', slot: slot.id },
    })
    expect(laid(aRecord(trim, { ...slot, state: 'asked' }), 'trim').from).toBe(NOW)
  })

  it('asks no links of what was removed', () => {
    const gone = aStage({ id: id('gone'), removedAt: at(-1) })
    const next = aStage({ id: id('next'), hoursLikely: 9 })
    const record = aRecord(gone, next, aLink({ from: gone.id, to: next.id, leastLagHours: 500 }))
    expect(layOut(record, [], NOW).stages.size).toBe(1)
    expect(laid(record, 'next').from).toBe(NOW)
  })

  it('lays 120 stages: each after what it waits for, the run unbroken up to the last', () => {
    const record = aCarOfStages(120)
    const { stages, run, end } = layOut(record, [], NOW)
    expect(stages.size).toBe(120)
    for (const { from, to, leastLagHours } of all(record.links)) {
      const before = stages.get(from) ?? expect.fail(from)
      const after = stages.get(to) ?? expect.fail(to)
      if (after.tense !== 'to come') continue
      const free = Date.parse(before.to) + leastLagHours * 3_600_000
      expect(Date.parse(after.from)).toBeGreaterThanOrEqual(free)
    }
    for (const [n, stage] of run.entries()) {
      const before = run[n - 1]
      if (before !== undefined)
        expect(stages.get(stage)?.waitsFor).toEqual({ kind: 'stage', stage: before })
    }
    expect(stages.get(run.at(-1) ?? '')?.to).toBe(end)
    expect(run.length).toBeGreaterThan(3)
    expect(layOut(record, [], NOW)).toEqual({ stages, run, end })
  })
})
