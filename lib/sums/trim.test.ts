import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy } from '../../test/worked-sum.ts'
import { cloth } from './cloth.ts'
import { hides } from './hides.ts'
import { piping } from './piping.ts'

describe('hides', () => {
  // Common practice; the square foot exact, against mathjs in the units' test.
  it.each([
    [{ pattern: 96, waste: 30, hide: 50 }, '137.1', '12.74', '3'],
    [{ pattern: 130, waste: 35, hide: 52 }, '200.0', '18.58', '4'],
    [{ pattern: 130, waste: 35, hide: 50 }, '200.0', '18.58', '4'],
    [{ pattern: 100, waste: 30, hide: 50 }, '142.9', '13.27', '3'],
  ])('for %o', (input, area, m2, count) => {
    expect(shownBy(hides, input)).toEqual({ 'sq ft': area, 'm²': m2, hides: count })
  })

  it('asks whether a waste of 0.3 is 30 %', () => {
    const asked = askedAbout(hides, { pattern: 96, waste: 0.3, hide: 50 })
    expect(asked?.next.map((next) => shownBy(hides, next)['sq ft'])).toEqual(['137.1', '96.3'])
  })

  it('are refused at 90 % waste and for no pattern', () => {
    expect(refusedFor(hides, { pattern: 0, waste: 90, hide: 50 })).toEqual(['pattern', 'waste'])
  })
})

describe('cloth', () => {
  const five = { pieces: 5, length: 1450, width: 640, roll: 1400, allowance: 5 }

  it('for five pieces, two across, is 4.57 m', () => {
    expect(shownBy(cloth, five)).toMatchObject({ across: '2', rows: '3', length: '4.57' })
  })

  it('with a repeat of 64 mm makes 576 mm of a piece of 520', () => {
    const ten = { ...five, pieces: 10, length: 520, repeat: 64 }
    expect(shownBy(cloth, ten)).toMatchObject({ piece: '576' })
    expect(shownBy(cloth, { ...ten, length: 576 })).toMatchObject({ piece: '576' })
  })

  it('turns no piece that is wider than the cloth without asking', () => {
    const asked = askedAbout(cloth, { ...five, length: 640, width: 1450 })
    expect(asked?.field).toBe('width')
    expect(shownBy(cloth, asked?.next[0])).toMatchObject({ length: '4.57' })
    const big = { ...five, width: 1450 }
    expect(askedAbout(cloth, big)).toBeNull()
    expect(refusedFor(cloth, big)).toEqual(['width'])
  })

  it('is refused for half a piece', () => {
    expect(refusedFor(cloth, { ...five, pieces: 4.5 })).toEqual(['pieces'])
  })
})

it('piping is a tenth more than its seams', () => {
  expect(shownBy(piping, { seams: [1200, 800.5] })).toEqual({ length: '2.20' })
  expect(refusedFor(piping, { seams: [] })).toEqual(['seams'])
})
