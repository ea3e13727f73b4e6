import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type Bar, inRows, widthInTwoLines } from './in-rows.ts'

const aBar = (id: string, left: number, right: number, name = 'Brakes and pipes'): Bar => ({
  id,
  left,
  right,
  cure: 0,
  figures: 2,
  name,
})
const only = (bars: readonly Bar[], id: string) =>
  inRows(bars).find((tile) => tile.id === id) ?? expect.fail(id)

describe('the words on a drawn build order', () => {
  it('stand in the bar where it is long enough', () => {
    expect(only([aBar('a', 0, 400)], 'a')).toMatchObject({ words: 'inside', holdsNumber: true })
  })

  it('stand on the right of a short one', () => {
    const tile = only([aBar('a', 0, 50)], 'a')
    expect(tile).toMatchObject({ words: 'right', holdsNumber: true, to: 50 })
    expect(tile.nameTo).toBeGreaterThan(50 + tile.nameWidth)
  })

  it('have the number behind a bar of an hour, which is still wide enough for a thumb', () => {
    const tile = only([aBar('a', 10, 13)], 'a')
    expect(tile.holdsNumber).toBe(false)
    expect(tile.to - tile.from).toBeGreaterThanOrEqual(44)
  })

  it('make room in another row before a name is left out', () => {
    const tiles = inRows([aBar('a', 0, 50), aBar('b', 70, 120)])
    expect(tiles.map(({ row }) => row)).toEqual([0, 1])
    expect(tiles.every(({ words }) => words === 'right')).toBe(true)
  })

  it('leave names out in a lane that is full, and go to the left where that is free', () => {
    // As many at once as rows may be opened: the next finds no row that keeps a name.
    const full = Array.from({ length: 9 }, (_, n) => aBar(`full${n}`, 0, 50))
    const tiles = inRows([...full, aBar('x', 70, 120)])
    const first = tiles.find(({ id, row }) => row === 0 && id !== 'x')
    expect(tiles.find(({ id }) => id === 'x')).toMatchObject({ row: 0, words: 'right' })
    expect(first?.words).toBe('number')
    const late = Array.from({ length: 9 }, (_, n) => aBar(`late${n}`, 300, 350))
    const both = inRows([...late, aBar('y', 370, 420)])
    expect(both.find(({ id, row }) => row === 0 && id !== 'y')?.words).toBe('left')
  })

  it('break a name where its two lines are shortest', () => {
    expect(widthInTwoLines('Brakes')).toBe(Math.ceil(6 * 8.4))
    expect(widthInTwoLines('Brakes and pipes')).toBe(Math.ceil(9 * 8.4))
    expect(widthInTwoLines('x'.repeat(200))).toBe(300)
  })

  it('keep room for the cure that follows a bar', () => {
    const cured = { ...aBar('a', 0, 50), cure: 60 }
    expect(only([cured], 'a').to).toBe(110)
  })

  const anyBars = fc
    .array(
      fc.record({
        left: fc.nat(4_000),
        width: fc.nat(500),
        cure: fc.oneof(fc.constant(0), fc.nat(120)),
        figures: fc.integer({ min: 2, max: 4 }),
        name: fc.string({ minLength: 1, maxLength: 60 }),
      }),
      { maxLength: 120 },
    )
    .map((all) =>
      all.map(
        ({ left, width, cure, figures, name }, n): Bar => ({
          id: `${n}`,
          left,
          right: left + width,
          cure,
          figures,
          name,
        }),
      ),
    )

  it('never lie on each other, whatever the days', () => {
    fc.assert(
      fc.property(anyBars, (bars) => {
        const tiles = inRows(bars)
        expect(tiles.length).toBe(bars.length)
        for (const row of Map.groupBy(tiles, ({ row }) => row).values()) {
          const sorted = row.toSorted((a, b) => a.nameFrom - b.nameFrom)
          for (const [n, tile] of sorted.entries()) {
            const next = sorted[n + 1]
            expect(tile.nameFrom).toBeGreaterThanOrEqual(0)
            expect(tile.nameFrom).toBeLessThanOrEqual(tile.from)
            expect(tile.nameTo).toBeGreaterThanOrEqual(tile.to)
            expect(tile.to).toBeGreaterThanOrEqual(tile.right + tile.cure)
            expect(tile.to - tile.from).toBeGreaterThanOrEqual(44)
            if (next !== undefined) expect(next.nameFrom).toBeGreaterThan(tile.nameTo)
          }
        }
      }),
    )
  })

  it('say a name beside its bar only with room for all of it', () => {
    fc.assert(
      fc.property(anyBars, (bars) => {
        for (const { words, nameWidth, from, to, nameFrom, nameTo } of inRows(bars)) {
          if (words === 'right') expect(nameTo - to).toBeGreaterThan(nameWidth)
          if (words === 'left') expect(from - nameFrom).toBeGreaterThan(nameWidth)
        }
      }),
    )
  })

  it('stand in the same places for the same bars, in whatever order they came', () => {
    fc.assert(
      fc.property(anyBars, (bars) => {
        const byId = (tiles: ReturnType<typeof inRows>) =>
          tiles.toSorted((a, b) => a.id.localeCompare(b.id))
        expect(byId(inRows(bars.toReversed()))).toEqual(byId(inRows(bars)))
      }),
    )
  })
})
