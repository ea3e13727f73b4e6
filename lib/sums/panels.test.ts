import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { flush } from './flush.ts'
import { panelGap } from './panel-gap.ts'

const gap = (readings: readonly number[], taper = 1) => ({
  agreed: 4.5,
  by: 'gap sheet',
  tolerance: 0.5,
  taper,
  points: readings.length,
  gauge: 'feeler',
  readings,
})

describe('a panel gap', () => {
  // Common practice, no source; exact decimals.
  it.each([
    [gap([4.2, 4.4, 4.6, 4.8, 5.0]), '4.60', '0.8', 'As agreed'],
    [gap([4.0, 4.3, 4.5, 4.9, 5.1]), '4.56', '1.1', 'Out: point 5; taper'],
    [gap([4.0, 4.1, 4.0, 3.9], 0.5), '4.00', '0.2', 'Out: point 4'],
  ])('%o', (input, mean, taper, says) => {
    expect(shownBy(panelGap, input)).toEqual({ mean, taper })
    expect(worked(panelGap, input).verdict).toEqual({ passes: says === 'As agreed', words: says })
  })

  it('of tenths never fails by binary rounding: it agrees with whole tenths', () => {
    const tenths = fc.integer({ min: 0, max: 100 })
    fc.assert(
      fc.property(tenths, tenths, fc.integer({ min: 0, max: 20 }), (agreed, read, tolerance) => {
        const input = {
          ...gap([read / 10], 10),
          agreed: agreed / 10,
          tolerance: tolerance / 10,
        }
        const passes = Math.abs(read - agreed) <= tolerance
        expect(worked(panelGap, input).verdict?.passes).toBe(passes)
      }),
    )
  })

  it('tapers by 0.5 from 4.1 to 3.6 and from 5.0 to 4.5', () => {
    const within = (readings: number[]) => ({ ...gap(readings, 0.5), tolerance: 5 })
    expect(worked(panelGap, within([4.1, 3.6])).verdict?.passes).toBe(true)
    expect(worked(panelGap, within([5.0, 4.5])).verdict?.passes).toBe(true)
  })

  it('is set against the same point of the other side', () => {
    const both = { ...gap([4.2, 4.4]), otherSide: [4.5, 4.8], sides: 0.3 }
    expect(worked(panelGap, both).verdict?.words).toBe('Out: point 2 against the other side')
    expect(refusedFor(panelGap, { ...both, sides: undefined })).toEqual(['sides'])
    expect(refusedFor(panelGap, { ...both, otherSide: [4.5] })).toEqual(['otherSide'])
  })

  it('is not complete with fewer points than the sheet has, and refused over 25 mm', () => {
    expect(refusedFor(panelGap, { ...gap([4.2, 4.4]), points: 5 })).toEqual(['readings'])
    expect(refusedFor(panelGap, gap([26]))).toEqual(['readings.0'])
    expect(refusedFor(panelGap, { ...gap([4.2]), gauge: '', by: '' })).toEqual(['by', 'gauge'])
  })
})

describe('flush', () => {
  const door = {
    panel: 'Door',
    lies: 'rearward',
    least: -0.5,
    greatest: 0.5,
    points: 3,
    readings: [0.2, -0.5, 0.6],
  }

  it('fails where a point is outside its limits, which are inclusive', () => {
    expect(worked(flush, door).verdict).toEqual({ passes: false, words: 'Out: point 3' })
    expect(worked(flush, { ...door, readings: [0.5, -0.5, 0] }).verdict?.passes).toBe(true)
  })

  it('warns of a rearward panel that stands proud into the wind', () => {
    expect(worked(flush, door).warnings[0]).toContain('point 1, point 3')
    expect(worked(flush, { ...door, lies: 'forward' }).warnings[0]).toContain('at point 2')
    expect(worked(flush, { ...door, lies: 'beside' }).warnings).toEqual([])
  })

  it('asks about limits the wrong way round, and is not complete with too few points', () => {
    const asked = askedAbout(flush, { ...door, least: 0.5, greatest: -0.5 })
    expect(worked(flush, asked?.next[0]).verdict?.words).toBe('Out: point 3')
    expect(refusedFor(flush, { ...door, points: 4 })).toEqual(['readings'])
  })
})
