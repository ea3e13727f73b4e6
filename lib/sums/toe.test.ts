import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy } from '../../test/worked-sum.ts'
import { toeDegrees } from './toe-degrees.ts'
import { toeMillimetres } from './toe-millimetres.ts'

const at = (diameter: number) => ({ given: 'total', at: 'rim edge', diameter })

describe('toe in degrees', () => {
  // Geometry.
  it.each([
    [2, 381, '0.150', '0.301', '18.0'],
    [-1.5, 330, '-0.130', '-0.260', '-15.6'],
    [3, 635, '0.135', '0.271', '16.2'],
  ])('of %s mm at %s mm', (mm, diameter, each, total, minutes) => {
    expect(shownBy(toeDegrees, { mm, ...at(diameter) })).toEqual({ each, total, minutes })
  })

  it('agrees with the small angle, mm over diameter in radians, up to 10 mm', () => {
    for (const mm of [0.1, 1, 5, 10])
      expect(
        Math.abs(valueBy(toeDegrees, { mm, ...at(381) }, 'total') - (mm / 381) * 57.2958),
      ).toBeLessThan(0.001)
  })

  it('counts a wheel’s own twice', () => {
    const one = { mm: 1, ...at(381), given: 'each wheel' }
    expect(shownBy(toeDegrees, one)).toMatchObject({ minutes: '18.0' })
  })

  it('is refused without total or wheel, without rim or tyre, and over 30 mm', () => {
    expect(refusedFor(toeDegrees, { mm: 2, diameter: 381 })).toEqual(['given', 'at'])
    expect(refusedFor(toeDegrees, { mm: 31, ...at(381) })).toEqual(['mm'])
    expect(refusedFor(toeDegrees, { mm: 2, ...at(150) })).toEqual(['diameter'])
  })
})

describe('toe in millimetres', () => {
  it('of 0° 20′ at 381 mm is 2.22', () => {
    expect(shownBy(toeMillimetres, { minutes: 20, ...at(381) })).toEqual({ mm: '2.22' })
    expect(shownBy(toeMillimetres, { degrees: 0, minutes: 20, ...at(381) })).toEqual({ mm: '2.22' })
  })

  it('asks whether 0.30 is 0° 30′ or three tenths of a degree', () => {
    const asked = askedAbout(toeMillimetres, { degrees: 0.3, ...at(381) })
    expect(asked?.field).toBe('degrees')
    expect(asked?.next.map((next) => shownBy(toeMillimetres, next).mm)).toEqual(['3.32', '1.99'])
  })

  it('comes back to what toe in degrees came from', () => {
    for (const mm of [-12, -1.5, 0, 2, 25]) {
      const degrees = valueBy(toeDegrees, { mm, ...at(381) }, 'total')
      const back = { degrees, ...at(381), meant: ['degrees'] }
      expect(valueBy(toeMillimetres, back, 'mm')).toBeCloseTo(mm, 9)
    }
  })

  it('is refused of nothing, and of decimals beside minutes', () => {
    expect(refusedFor(toeMillimetres, at(381))).toEqual(['degrees'])
    expect(refusedFor(toeMillimetres, { degrees: 0.5, minutes: 10, ...at(381) })).toEqual([
      'degrees',
    ])
  })
})
