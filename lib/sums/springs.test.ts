import { describe, expect, it } from 'vitest'
import { refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { coilSpring } from './coil-spring.ts'
import { cornerWeights } from './corner-weights.ts'
import { wheelRate } from './wheel-rate.ts'

describe('a coil spring', () => {
  const spring = { wire: 12, coil: 102, turns: 8.5, shear: '79300' }

  // EN 13906-1 (from memory).
  it('of 12 mm wire, 102 mm across, 8.5 working coils, has 22.79 N/mm', () => {
    expect(shownBy(coilSpring, spring)).toEqual({ 'N/mm': '22.79', 'lbf/in': '130.1' })
  })

  it('is stiffer by the other modulus, which is not guessed', () => {
    expect(shownBy(coilSpring, { ...spring, shear: '81500' })).toMatchObject({ 'N/mm': '23.42' })
    expect(refusedFor(coilSpring, { ...spring, shear: undefined })).toEqual(['shear'])
  })

  it('is warned of where coil to wire is outside 4 to 16, and refused without coils', () => {
    expect(worked(coilSpring, spring).warnings).toEqual([])
    expect(worked(coilSpring, { ...spring, wire: 6 }).warnings).toHaveLength(1)
    expect(refusedFor(coilSpring, { ...spring, turns: 0 })).toEqual(['turns'])
  })
})

it('a spring of 22.8 N/mm at a motion ratio of 0.62 has 8.76 N/mm at the wheel', () => {
  expect(shownBy(wheelRate, { rate: 22.8, motion: 0.62 })).toMatchObject({ wheel: '8.76' })
})

describe('corner weights', () => {
  const weighed = (...[leftFront, rightFront, leftRear, rightRear]: readonly number[]) => ({
    leftFront,
    rightFront,
    leftRear,
    rightRear,
    pads: 'yes',
    driver: 75,
  })

  it.each([
    [weighed(268, 259, 231, 240), '998', '52.8', '50.0', '49.1'],
    [weighed(300, 300, 250, 250), '1100', '54.5', '50.0', '50.0'],
  ])('%o', (input, total, front, left, cross) => {
    expect(shownBy(cornerWeights, input)).toEqual({ total, front, left, cross })
  })

  it('are refused on pads that aren’t level, without saying who is aboard, and of nothing', () => {
    expect(refusedFor(cornerWeights, { ...weighed(1, 1, 1, 1), pads: 'no' })).toEqual(['pads'])
    expect(refusedFor(cornerWeights, { ...weighed(1, 1, 1, 1), driver: '' })).toEqual(['driver'])
    expect(refusedFor(cornerWeights, weighed(0, 0, 0, 0))).toEqual(['leftFront'])
  })
})
