import { describe, expect, it } from 'vitest'
import { Handover } from '../record/entities/things.ts'
import { isSigned, strokesWithin } from './signature.ts'

const scribble = (points: number) =>
  Array.from({ length: points }, (_, n) => `${n === 0 ? 'M' : 'L'}${n % 600} ${n % 200}`).join('')

describe('a finger signature', () => {
  it('is cut where a handover keeps no more, at a whole point', () => {
    const path = strokesWithin(scribble(5000))
    expect(path.length).toBeLessThanOrEqual(20_000)
    expect(path).toMatch(/^(?:[ML]\d+ \d+)+$/)
    expect(Handover.shape.signature.safeParse(path).success).toBe(true)
  })

  it('is left as it is while it fits', () => {
    expect(strokesWithin('M1 1L2 2')).toBe('M1 1L2 2')
  })

  it('is more than a dot', () => {
    expect(isSigned('')).toBe(false)
    expect(isSigned('M5 5L5 5')).toBe(false)
    expect(isSigned('M5 5L5 5L20 30L40 8')).toBe(true)
  })
})
