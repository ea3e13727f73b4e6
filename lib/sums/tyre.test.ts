import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy, worked } from '../../test/worked-sum.ts'
import { gearing } from './gearing.ts'
import { speedometer } from './speedometer.ts'

const of = (width: number, aspect: number, rim: number, axle: number, gear: number) => ({
  build: 'radial',
  width,
  aspect,
  rim,
  axle,
  gear,
})

describe('gearing', () => {
  // Size arithmetic; 205/55 on 16 in is 631.9 mm (well known, from memory).
  it.each([
    [of(165, 80, 15, 3.909, 1), '645.0', '1967', '30.20', '18.76'],
    [of(185, 70, 14, 3.54, 0.797), '614.6', '1875', '39.86', '24.77'],
    [of(205, 55, 16, 4.1, 1), '631.9', '1927', '28.20', '17.53'],
  ])('of %o', (input, diameter, rolling, kmh, mph) => {
    expect(shownBy(gearing, input)).toEqual({ diameter, rolling, 'km/h': kmh, mph })
  })

  it('rolls 0.971 of the free circumference of a radial', () => {
    const input = of(205, 55, 16, 4.1, 1)
    const free = Math.PI * valueBy(gearing, input, 'diameter')
    expect(valueBy(gearing, input, 'rolling') / free).toBeCloseTo(0.971, 3)
  })

  it('goes by a measured roll-out where there is one, for which no size is needed', () => {
    const input = { build: 'cross-ply', rollOut: 2000, axle: 4, gear: 1 }
    expect(shownBy(gearing, input)).toEqual({ rolling: '2000', 'km/h': '30.00', mph: '18.64' })
  })

  it('asks for the aspect of an old radial, 82 or 80', () => {
    const { aspect: _, ...old } = of(165, 0, 15, 4, 1)
    const asked = askedAbout(gearing, old)
    expect(asked?.field).toBe('aspect')
    expect(asked?.next.map((next) => shownBy(gearing, next).diameter)).toEqual(['651.6', '645.0'])
  })

  it('wants a cross-ply measured, and refuses an old size in inches', () => {
    expect(refusedFor(gearing, { ...of(165, 80, 15, 4, 1), build: 'cross-ply' })).toEqual([
      'rollOut',
    ])
    expect(refusedFor(gearing, of(5.6, 80, 15, 4, 1))).toEqual(['width'])
    expect(refusedFor(gearing, { build: 'radial', axle: 4, gear: 1 })).toEqual(['width'])
    expect(refusedFor(gearing, { build: 'radial', width: 165, axle: 4, gear: 1 })).toEqual(['rim'])
  })
})

describe('a speedometer after another tyre', () => {
  const change = {
    build: 'radial',
    oldWidth: 165,
    oldAspect: 80,
    oldRim: 15,
    newWidth: 185,
    newAspect: 65,
    newRim: 15,
    shown: 60,
    unit: 'mph',
  }

  it('set for 165/80-15 shows 60 where 185/65-15 does 57.8', () => {
    expect(shownBy(speedometer, change)).toMatchObject({ true: '57.8' })
  })

  it('that shows too little is warned of', () => {
    expect(worked(speedometer, change).warnings).toEqual([])
    expect(worked(speedometer, { ...change, newAspect: 80 }).warnings).toHaveLength(1)
  })

  it('takes roll-outs, and asks for the missing aspect of the one tyre', () => {
    const rolled = {
      build: 'cross-ply',
      oldRollOut: 2000,
      newRollOut: 1900,
      shown: 100,
      unit: 'km/h',
    }
    expect(shownBy(speedometer, rolled)).toEqual({ true: '95.0', error: '-5.0' })
    expect(askedAbout(speedometer, { ...change, newAspect: undefined })?.field).toBe('newAspect')
  })
})
