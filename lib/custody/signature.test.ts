import { describe, expect, it } from 'vitest'
import { Handover } from '../record/entities/things.ts'
import { CROSS, isSigned, strokesWithin, withoutLastStroke } from './signature.ts'

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

  it('loses its last stroke only, until nothing is left', () => {
    expect(withoutLastStroke('M5 5L9 9M20 30L40 8L50 9')).toBe('M5 5L9 9')
    expect(withoutLastStroke('M5 5L9 9')).toBe('')
    expect(withoutLastStroke('')).toBe('')
  })

  it('may be a cross, for who can’t draw', () => {
    expect(isSigned(CROSS)).toBe(true)
    expect(Handover.shape.signature.safeParse(CROSS).success).toBe(true)
  })
})
