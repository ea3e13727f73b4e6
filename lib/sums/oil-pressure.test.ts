import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { oilPressure } from './oil-pressure.ts'
import { primingPressure } from './priming-pressure.ts'

const hot = { unit: 'psi', oil: 'hot' }

describe('the oil pressure of a hot engine', () => {
  // Common practice, arithmetic.
  it.each([
    [3000, 42, '30.0', true],
    [800, 7, '8.0', false],
    [2500, 25, '25.0', true],
  ])('at %s rev/min and %s psi', (speed, pressure, least, passes) => {
    expect(shownBy(oilPressure, { ...hot, speed, pressure })).toMatchObject({ least })
    expect(worked(oilPressure, { ...hot, speed, pressure }).verdict?.passes).toBe(passes)
  })

  it('of 6.5 bar is 94.3 psi', () => {
    const input = { ...hot, unit: 'bar', speed: 3000, pressure: 6.5 }
    expect(shownBy(oilPressure, input)).toMatchObject({ psi: '94.3' })
  })

  it('asks how warm the oil is, and doesn’t judge cold oil', () => {
    const asked = askedAbout(oilPressure, { unit: 'psi', speed: 3000, pressure: 42 })
    expect(asked?.field).toBe('oil')
    expect(worked(oilPressure, asked?.next[0]).verdict?.passes).toBe(true)
    expect(refusedFor(oilPressure, asked?.next[1])).toEqual(['oil'])
  })

  it('is measured against the engine’s own figure where there is one', () => {
    const input = { ...hot, speed: 3000, pressure: 42, own: 45 }
    expect(worked(oilPressure, input).verdict?.passes).toBe(false)
  })

  it('is refused over 150 psi and under 400 rev/min', () => {
    expect(refusedFor(oilPressure, { ...hot, speed: 3000, pressure: 160 })).toEqual(['pressure'])
    expect(refusedFor(oilPressure, { ...hot, speed: 300, pressure: 10 })).toEqual(['speed'])
  })
})

describe('the oil gauge before a first start', () => {
  // Common practice: 50 to 75 psi with a drive; nothing after 15 to 20 s means stop.
  it.each([
    ['drive', 30, 60, true],
    ['drive', 30, 50, true],
    ['drive', 30, 75, true],
    ['drive', 30, 30, false],
    ['drive', 30, 90, false],
    ['starter', 20, 40, undefined],
    ['starter', 20, 0, false],
    ['drive', 10, 0, undefined],
  ])('driven by the %s for %s s shows %s psi', (by, seconds, pressure, passes) => {
    const input = { by, seconds, unit: 'psi', pressure }
    expect(worked(primingPressure, input).verdict?.passes).toBe(passes)
  })

  it('is not read without knowing what drives the oil', () => {
    const input = { seconds: 10, unit: 'psi', pressure: 60 }
    expect(refusedFor(primingPressure, input)).toEqual(['by'])
    expect(refusedFor(primingPressure, { ...input, by: 'drive', unit: 'bar' })).toEqual([
      'pressure',
    ])
  })
})
