import { describe, expect, it } from 'vitest'
import { aCarOfStages } from '../../../test/a-car-of-stages.ts'
import { at, engineShop, lead, trimShop } from '../../../test/builders.ts'
import type { Instant } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { layOut } from '../lay-out.ts'
import { daysBetween } from './days.ts'
import { headsOf } from './heads.ts'
import { nextTile } from './next-tile.ts'
import { runStrings, stringsOf } from './strings.ts'
import { DAY_PX, type Hung, wallOf, type Zoom } from './wall.ts'

const NOW = at(0)
const record = aCarOfStages(120)
const links = all(record.links)
const laid = layOut(record, [], NOW)
const lanes = [lead, engineShop, trimShop]
const drawn = (zoom: Zoom, now: Instant = NOW) =>
  wallOf(all(record.stages), links, laid, lanes, { zoom, now, zone: 'Europe/London' })
const tile = (id: string): Hung => drawn('week').tiles.get(id) ?? expect.fail(id)

describe('a wall of 120 stages', () => {
  const zooms: readonly Zoom[] = ['day', 'week', 'month']

  it('has every stage in the lane of its shop, at every zoom', () => {
    for (const zoom of zooms) {
      const wall = drawn(zoom)
      expect(wall.tiles.size).toBe(120)
      expect(wall.lanes.map(({ party }) => party)).toEqual(lanes)
      for (const { party, top, height, tiles } of wall.lanes) {
        for (const { stage, y, nameTo } of tiles) {
          expect(stage.party).toBe(party)
          expect(y).toBeGreaterThan(top)
          expect(y).toBeLessThan(top + height)
          expect(nameTo).toBeLessThanOrEqual(wall.width)
        }
      }
    }
  })

  it('lays no tile and no name on another', () => {
    for (const zoom of zooms) {
      const rows = Map.groupBy(drawn(zoom).tiles.values(), ({ y }) => y)
      for (const row of rows.values()) {
        const sorted = row.toSorted((a, b) => a.nameFrom - b.nameFrom)
        for (const [n, { nameTo }] of sorted.entries())
          expect(sorted[n + 1]?.nameFrom ?? Number.POSITIVE_INFINITY).toBeGreaterThan(nameTo)
      }
    }
  })

  it('names more of them than not, even a month at a glance', () => {
    for (const zoom of zooms) {
      const tiles = [...drawn(zoom).tiles.values()]
      const nameless = tiles.filter(({ words }) => words === 'number').length
      expect(nameless).toBeLessThan(tiles.length / 2)
    }
  })

  it('has each bar where its days are', () => {
    const wall = drawn('week')
    for (const { laid: one, left, right } of wall.tiles.values()) {
      expect(left).toBeCloseTo(wall.days.along(one.from) * DAY_PX.week, 6)
      expect(right).toBeCloseTo(Math.max(left + 3, wall.days.along(one.to) * DAY_PX.week), 6)
    }
    expect(wall.today).toBeCloseTo(wall.days.along(NOW) * DAY_PX.week, 6)
  })

  it('strings the critical run from knot to knot, and of all other links only those of one stage', () => {
    const wall = drawn('week')
    expect(runStrings(wall, laid.run).length).toBe(laid.run.length - 1)
    const own = links.filter(({ from, to }) => from === 'stg_n50' || to === 'stg_n50')
    expect(own.length).toBeGreaterThan(1)
    expect(stringsOf(wall, 'stg_n50', links).length).toBe(own.length)
    expect(stringsOf(wall, 'nobody', links)).toEqual([])
  })
})

describe('the arrow keys on a wall', () => {
  const wall = drawn('week')
  const to = (from: string, key: string) => nextTile(wall, links, from, key)

  it('go left to something it waits for, and right to something that waits for it', () => {
    const some = links.find(({ from }) => from === 'stg_n50' || from === 'stg_n49')?.from ?? ''
    const before = to(some, 'ArrowLeft')
    expect(links.some((link) => link.from === before?.id && link.to === some)).toBe(true)
    const after = to(some, 'ArrowRight')
    expect(links.some((link) => link.from === some && link.to === after?.id)).toBe(true)
    expect(to('stg_n0', 'ArrowLeft')).toBeNull()
  })

  it('follow the critical run where there is a choice', () => {
    for (const [n, id] of laid.run.entries()) {
      const next = laid.run[n + 1]
      if (next !== undefined) expect(to(next, 'ArrowLeft')?.laid.onRun).toBe(true)
      if (next !== undefined) expect(to(id, 'ArrowRight')?.laid.onRun).toBe(true)
    }
  })

  it('go down and up by a row, and reach every lane', () => {
    const seen = new Set<string>()
    let at: Hung | null = wall.lanes[0]?.tiles[0] ?? null
    let y = -1
    while (at !== null) {
      expect(at.y).toBeGreaterThan(y)
      y = at.y
      seen.add(at.stage.party)
      at = to(at.id, 'ArrowDown')
    }
    expect([...seen]).toEqual(lanes)
    const first = wall.lanes[1]?.tiles[0]
    expect(to(first?.id ?? '', 'ArrowUp')?.stage.party).toBe(lead)
  })

  it('go Home to what began first and with End to what ends last', () => {
    expect(to('stg_n50', 'Home')?.id).toBe('stg_n0')
    expect(to('stg_n50', 'End')?.laid.to).toBe(laid.end)
    expect(to('stg_n50', 'a')).toBeNull()
  })
})

describe('the days over a wall', () => {
  it('are whole weeks, Monday first, an hour more or less in them or not', () => {
    const { dates, along } = daysBetween(at(0), at(24 * 40), 'Europe/London')
    expect(dates[0]).toBe('2026-03-02')
    expect(dates.length % 7).toBe(0)
    expect(along(at(-8))).toBe(0)
    expect(along(at(4))).toBeCloseTo(0.5, 6)
    // On 29 March the clocks went forward: midnight of the 30th is an hour sooner.
    expect(along(at(27 * 24 + 15))).toBe(28)
    expect(along(at(99_999))).toBe(dates.length)
    expect(along(at(-99_999))).toBe(0)
  })

  it('are named by month, and by day or by Monday', () => {
    const week = headsOf(drawn('week'))
    expect(week.days.every(({ date }) => new Date(date).getUTCDay() === 1)).toBe(true)
    const day = headsOf(drawn('day'))
    expect(day.days.length).toBe(drawn('day').days.dates.length)
    const months = day.months.map(({ date }) => date.slice(0, 7))
    expect(new Set(months).size).toBe(months.length)
    expect(day.months.reduce((sum, { width }) => sum + width, 0)).toBe(day.days.length * DAY_PX.day)
    expect(tile('stg_n0').laid.tense).toBe('over')
  })
})
