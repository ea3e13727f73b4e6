import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy } from '../../test/worked-sum.ts'
import { coolantFreeze } from './coolant-freeze.ts'
import { coolantShare } from './coolant-share.ts'
import { coolantTopUp } from './coolant-top-up.ts'

const kind = 'ethylene glycol'
const of = (percent: number, by: 'volume' | 'mass') => ({ kind, percent, by })

describe('the freezing point of coolant', () => {
  // Table after ASHRAE Fundamentals, from memory.
  it.each([
    [33.3, '-18.5'],
    [50, '-37.3'],
    [25, '-12.2'],
    [0, '0.0'],
    [57.8, '-48.3'],
  ])('of %s %% by volume', (percent, freezes) => {
    expect(shownBy(coolantFreeze, of(percent, 'volume'))).toMatchObject({ freezes })
  })

  // CoolProp's incompressible ethylene glycol, by mass: the two sources differ by up to 2.9 °C.
  it.each([
    [10, -3.36],
    [20, -7.95],
    [30, -14.58],
    [40, -23.81],
    [50, -35.99],
    [60, -51.2],
  ])(
    'of %s %% by mass lies within 3 °C of an independent library, and one counts on no more than both',
    (percent, theirs) => {
      const freezes = valueBy(coolantFreeze, of(percent, 'mass'), 'freezes')
      expect(Math.abs(freezes - theirs)).toBeLessThan(3)
      expect(valueBy(coolantFreeze, of(percent, 'mass'), 'count on')).toBeGreaterThanOrEqual(
        Math.max(freezes, theirs),
      )
    },
  )

  it('of 50 % lies within 3 °C of a hydronics table that prints −34 °F (read)', () => {
    expect(valueBy(coolantFreeze, of(50, 'volume'), 'freezes')).toBeCloseTo(-36.7, -0.5)
  })

  it('is asked about where nobody said by volume or by mass', () => {
    const asked = askedAbout(coolantFreeze, { kind, percent: 50 })
    expect(asked?.field).toBe('by')
    expect(asked?.next.map((next) => shownBy(coolantFreeze, next).freezes)).toEqual([
      '-37.3',
      '-33.8',
    ])
  })

  it('is refused over 60 %, beyond the table, and for another coolant', () => {
    expect(coolantFreeze.work(of(70, 'volume'))).toMatchObject({
      faults: [{ field: 'percent', message: expect.stringContaining('protects less') }],
    })
    expect(refusedFor(coolantFreeze, of(58, 'volume'))).toEqual(['percent'])
    expect(refusedFor(coolantFreeze, of(60, 'mass'))).toEqual([])
    expect(refusedFor(coolantFreeze, { ...of(50, 'volume'), kind: 'propylene glycol' })).toEqual([
      'kind',
    ])
  })
})

describe('coolant for the cold', () => {
  it('is 40.1 % by volume for −25 °C, and none stands −50 °C', () => {
    expect(shownBy(coolantShare, { kind, celsius: -25 })).toMatchObject({ volume: '40.1' })
    expect(refusedFor(coolantShare, { kind, celsius: -50 })).toEqual(['celsius'])
    expect(refusedFor(coolantShare, { kind: 'other', celsius: -25 })).toEqual(['kind'])
  })
})

describe('stronger coolant', () => {
  const nine = { kind, system: 9, there: 25, wanted: 45, added: 100 }

  it('takes 2.40 L of neat glycol to bring 9 L from 25 to 45 %', () => {
    expect(shownBy(coolantTopUp, nine)).toEqual({ litres: '2.40' })
  })

  it('has what was wanted in the system afterwards', () => {
    const share = fc.integer({ min: 0, max: 57 })
    fc.assert(
      fc.property(share, share, fc.integer({ min: 58, max: 100 }), (one, two, added) => {
        fc.pre(one !== two)
        const [there, wanted] = [Math.min(one, two), Math.max(one, two)]
        const litres = valueBy(coolantTopUp, { ...nine, there, wanted, added }, 'litres')
        expect(((9 - litres) * there + litres * added) / 9).toBeCloseTo(wanted, 9)
      }),
    )
  })

  it('is refused where nothing is to add, what is added is weaker, or the table ends', () => {
    expect(refusedFor(coolantTopUp, { ...nine, wanted: 25 })).toEqual(['wanted'])
    expect(refusedFor(coolantTopUp, { ...nine, added: 40 })).toEqual(['added'])
    expect(refusedFor(coolantTopUp, { ...nine, wanted: 70 })).toEqual(['wanted'])
  })
})
