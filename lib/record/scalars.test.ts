import { describe, expect, it } from 'vitest'
import { Instant } from './scalars.ts'

describe('an instant', () => {
  it('is a moment by its one name in UTC', () => {
    expect(Instant.safeParse('2028-02-29T23:59:59.999Z').success).toBe(true)
  })

  it.each([
    '2026-11-25T08:17:22Z',
    '2026-11-25T08:17:22.123+01:00',
    '2026-13-01T00:00:00.000Z',
    '2026-11-25T24:00:00.000Z',
    '2026-02-30T08:00:00.000Z',
  ])('is not %s, which has another name or is none', (text) => {
    expect(Instant.safeParse(text).success).toBe(false)
  })
})
