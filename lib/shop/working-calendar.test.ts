import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { workingCalendar } from './working-calendar.ts'

const shop = workingCalendar({ opensAt: '08:00', closesAt: '18:00', timeZone: 'Europe/London' })
const ms = (text: string): number => Date.parse(`${text}:00.000Z`)
const text = (at: number): string => new Date(at).toISOString().slice(0, 16)

describe('the working days of a shop', () => {
  it('end work at closing time and go on after the weekend', () => {
    // Thursday and Friday 10 h each, the rest on Monday.
    expect(text(shop.after(ms('2026-12-03T08:00'), 20))).toBe('2026-12-04T18:00')
    expect(text(shop.after(ms('2026-12-03T08:00'), 20.5))).toBe('2026-12-07T08:30')
    expect(text(shop.after(ms('2026-12-05T12:00'), 4))).toBe('2026-12-07T12:00')
  })

  it('begin when the shop opens', () => {
    expect(text(shop.opensFrom(ms('2026-12-03T06:00')))).toBe('2026-12-03T08:00')
    expect(text(shop.opensFrom(ms('2026-12-03T11:20')))).toBe('2026-12-03T11:20')
    expect(text(shop.opensFrom(ms('2026-12-04T18:00')))).toBe('2026-12-07T08:00')
  })

  it('say when work must begin to be over in time', () => {
    expect(text(shop.before(ms('2026-12-07T08:30'), 20.5))).toBe('2026-12-03T08:00')
    expect(text(shop.before(ms('2026-12-06T12:00'), 10))).toBe('2026-12-04T08:00')
  })

  it('follow the clock on the wall in summer', () => {
    expect(text(shop.opensFrom(ms('2026-07-01T00:00')))).toBe('2026-07-01T07:00')
    // The last Friday of winter time to the first Monday of summer time.
    expect(text(shop.after(ms('2026-03-27T17:00'), 2))).toBe('2026-03-30T08:00')
  })

  it('hold for a shop a day ahead of Greenwich', () => {
    const far = workingCalendar({ opensAt: '08:00', closesAt: '17:00', timeZone: 'Pacific/Apia' })
    expect(text(far.opensFrom(ms('2026-12-06T12:00')))).toBe('2026-12-06T19:00')
  })

  it('give back between two moments the hours that lie between them', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: ms('2026-01-01T00:00'), max: ms('2028-01-01T00:00') }),
        fc.integer({ min: 1, max: 4_000 }),
        (from, quarters) => {
          const hours = quarters / 4
          const end = shop.after(from, hours)
          expect(shop.between(from, end)).toBeCloseTo(hours, 6)
          expect(shop.between(shop.before(from, hours), from)).toBeCloseTo(hours, 6)
          // As late as may be, and no later.
          expect(shop.before(end, hours)).toBeGreaterThanOrEqual(from)
          expect(shop.after(shop.before(end, hours), hours)).toBe(end)
        },
      ),
    )
  })
})
