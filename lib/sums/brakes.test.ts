import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy } from '../../test/worked-sum.ts'
import { brakeHydraulics } from './brake-hydraulics.ts'
import { masterChange } from './master-change.ts'

const disc = {
  foot: 350,
  pedal: 4.5,
  servo: 1,
  master: 19.05,
  piston: 54,
  pistons: 1,
  sizes: 'maker’s',
}

describe('brake hydraulics', () => {
  // Pascal's law.
  it.each([
    [disc, '55.3', '12.66', '8.04'],
    [{ ...disc, master: 17.78 }, '63.4', '14.53', '9.22'],
    [
      { ...disc, foot: 250, pedal: 5, master: 20.64, piston: 38, pistons: 2 },
      '37.4',
      '8.47',
      '6.78',
    ],
  ])('of %o', (input, pressure, force, areas) => {
    expect(shownBy(brakeHydraulics, input)).toEqual({ pressure, force, areas })
  })

  it('gives out as much work as the foot puts in: force ratio is inverse travel ratio', () => {
    const bore = fc.double({ min: 8, max: 80, noNaN: true })
    fc.assert(
      fc.property(bore, bore, (master, piston) => {
        const input = { ...disc, foot: 1000, pedal: 1, master, piston }
        const force = valueBy(brakeHydraulics, input, 'force')
        // A master that moves 1 mm moves the piston by the ratio of the areas.
        const travel = (master / piston) ** 2
        expect(force * travel).toBeCloseTo(1, 9)
      }),
    )
  })

  it('that were changed from the maker’s sizes want a licensed engineer’s name', () => {
    expect(askedAbout(brakeHydraulics, { ...disc, sizes: 'changed' })?.field).toBe('engineer')
    expect(refusedFor(brakeHydraulics, { ...disc, sizes: 'changed', engineer: 'N. Roe' })).toEqual(
      [],
    )
    expect(refusedFor(brakeHydraulics, { ...disc, sizes: undefined })).toEqual(['sizes'])
  })

  it('are refused beyond 80 mm, 1500 N and 10:1, and with half a piston', () => {
    const beyond = { ...disc, foot: 1600, pedal: 11, master: 81 }
    expect(refusedFor(brakeHydraulics, beyond)).toEqual(['foot', 'pedal', 'master'])
    expect(refusedFor(brakeHydraulics, { ...disc, pistons: 1.5 })).toEqual(['pistons'])
  })
})

describe('another master cylinder', () => {
  it('of 0.70 in for 0.75 in gives 1.148 times the pressure, once an engineer signs for it', () => {
    const change = { before: 19.05, now: 17.78 }
    expect(askedAbout(masterChange, change)?.field).toBe('engineer')
    expect(shownBy(masterChange, { ...change, engineer: 'N. Roe' })).toEqual({
      pressure: '1.148',
      travel: '1.148',
    })
    expect(shownBy(masterChange, { before: 19.05, now: 19.05 })).toMatchObject({
      pressure: '1.000',
    })
  })
})
