import { describe, expect, it } from 'vitest'
import { workEnds } from './work-ends.ts'

const shop = { opensAt: '08:00', closesAt: '18:00' }

describe('when work ends', () => {
  it('ends the same day where the hours fit', () => {
    expect(workEnds('2026-12-03T08:00', 10, shop)).toBe('2026-12-03T18:00')
  })

  it('goes on over the weekend, which is off', () => {
    // Thursday and Friday 10 h each, the rest on Monday.
    expect(workEnds('2026-12-03T08:00', 20, shop)).toBe('2026-12-04T18:00')
    expect(workEnds('2026-12-03T08:00', 20.5, shop)).toBe('2026-12-07T18:00')
    expect(workEnds('2026-12-05T08:00', 4, shop)).toBe('2026-12-07T18:00')
  })

  it('counts what is left of the first day', () => {
    expect(workEnds('2026-12-03T15:00', 4, shop)).toBe('2026-12-04T18:00')
    expect(workEnds('2026-12-03T19:00', 1, shop)).toBe('2026-12-04T18:00')
  })

  it('needs the first day even for no hours at all', () => {
    expect(workEnds('2026-12-03T08:00', 0, shop)).toBe('2026-12-03T18:00')
  })
})
