import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy, worked } from '../../test/worked-sum.ts'
import { compressionRatio } from './compression-ratio.ts'

const four = {
  bore: 83,
  stroke: 83,
  cylinders: 4,
  chamber: 36,
  gasketBore: 84.5,
  gasket: 1.1,
  deck: 0.2,
  dome: 0,
}
const dishedSix = {
  bore: 87.3,
  stroke: 88.9,
  cylinders: 6,
  chamber: 52,
  gasketBore: 88.5,
  gasket: 1.2,
  deck: 0.5,
  dome: -4,
}
const square = {
  bore: 76.2,
  stroke: 76.2,
  cylinders: 4,
  chamber: 30,
  gasketBore: 78,
  gasket: 0.8,
  deck: 0,
  dome: 3.5,
}

describe('swept volume and compression ratio', () => {
  // Geometry, worked by an independent library.
  it.each([
    ['a four', four, { swept: '449.08', engine: '1796.3', clearance: '43.25', ratio: '11.38' }],
    [
      'a dished six',
      dishedSix,
      { swept: '532.13', engine: '3192.8', clearance: '66.37', ratio: '9.02' },
    ],
    [
      '3 in by 3 in',
      square,
      { swept: '347.50', engine: '1390.0', clearance: '30.32', ratio: '12.46' },
    ],
  ])('of %s', (_, input, shown) => {
    expect(shownBy(compressionRatio, input)).toEqual(shown)
  })

  it('of 3 in by 3 in is 21.2058 cu in a cylinder, times 16.387064', () => {
    expect(valueBy(compressionRatio, square, 'swept')).toBeCloseTo(21.2058 * 16.387064, 2)
  })

  it('asks whether a bore of 3.27 mm is in inches, and goes on with the answer', () => {
    const asked = askedAbout(compressionRatio, { ...four, bore: 3.27 })
    expect(asked?.field).toBe('bore')
    expect(shownBy(compressionRatio, asked?.next[0])).toMatchObject({ swept: '449.71' })
  })

  it('refuses a dome that fills the chamber, half a cylinder and a bore of 260 mm', () => {
    expect(refusedFor(compressionRatio, { ...four, dome: 60 })).toEqual(['dome'])
    expect(refusedFor(compressionRatio, { ...four, cylinders: 4.5 })).toEqual(['cylinders'])
    expect(refusedFor(compressionRatio, { ...four, bore: 260 })).toEqual(['bore'])
  })

  it('warns of a ratio outside 5 to 16, and of a gasket that stands into the cylinder', () => {
    expect(worked(compressionRatio, four).warnings).toEqual([])
    expect(worked(compressionRatio, { ...four, chamber: 20 }).warnings).toHaveLength(1)
    expect(worked(compressionRatio, { ...four, gasketBore: 82 }).warnings).toHaveLength(1)
  })
})
