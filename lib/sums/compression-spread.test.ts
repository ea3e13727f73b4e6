import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { compressionSpread } from './compression-spread.ts'

const test = (readings: readonly number[], limit = '0.90') => ({ unit: 'psi', readings, limit })

describe('a compression test', () => {
  // Common practice, arithmetic: no neutral published example.
  it.each([
    [[165, 160, 158, 162], '0.90', '0.958', '3', true],
    [[150, 148, 132, 151], '0.90', '0.874', '3', false],
    [[150, 148, 132, 151], '0.85', '0.874', '3', true],
    [[120, 118, 0, 121], '0.90', '0.000', '3', false],
  ])('of %o with limit %s', (readings, limit, ratio, lowest, passes) => {
    expect(shownBy(compressionSpread, test(readings, limit))).toMatchObject({ ratio, lowest })
    expect(worked(compressionSpread, test(readings, limit)).verdict?.passes).toBe(passes)
  })

  it('passes a cylinder that is exactly at the limit, in decimals too', () => {
    for (const readings of [
      [10, 9],
      [11, 9.9],
      [11.3, 10.17],
    ])
      expect(worked(compressionSpread, { ...test(readings), unit: 'bar' }).verdict?.passes).toBe(
        true,
      )
  })

  it('calls a dead cylinder dead, and no error, also where all are', () => {
    const dead = worked(compressionSpread, test([0, 0]))
    expect(dead.verdict).toEqual({ passes: false, words: 'Cylinder 1 is dead' })
  })

  it('has no hidden limit, wants two cylinders, and asks about 400 psi', () => {
    expect(refusedFor(compressionSpread, { unit: 'psi', readings: [150, 140] })).toEqual(['limit'])
    expect(refusedFor(compressionSpread, test([150]))).toEqual(['readings'])
    expect(askedAbout(compressionSpread, test([150, 400]))?.field).toBe('readings.1')
  })

  it('tells rings from valves by a spoon of oil, cylinder by cylinder', () => {
    const wet = (...readings: number[]) => ({ ...test([150, 120]), wet: readings })
    expect(worked(compressionSpread, wet(155, 140)).warnings[0]).toMatch(/cylinder 2 .*rings/)
    expect(worked(compressionSpread, wet(155, 125)).warnings[0]).toMatch(/valves/)
    expect(refusedFor(compressionSpread, wet(155, 140, 150))).toEqual(['wet'])
  })

  it('sets the mean beside the engine’s own figure', () => {
    const input = { ...test([150, 140]), own: 145 }
    expect(shownBy(compressionSpread, input)).toMatchObject({ mean: '145', 'of own': '100.0' })
  })
})
