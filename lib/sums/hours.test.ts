import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy } from '../../test/worked-sum.ts'
import { chargedHours } from './charged-hours.ts'
import { clockedHours } from './clocked-hours.ts'
import { efficiency, threePoint, timeToFinish } from './hours-estimate.ts'

const sil = { person: 'Sil', in: '08:10', out: '16:20', breaks: 30 }
const day = (...entries: readonly object[]) => ({ entries, rule: 'none' })

describe('hours by the clock', () => {
  // Arithmetic: 460 × 6850 ÷ 60 is 52516.67 pennies. From the shown 7.67 h it would be 525.40, 23 pennies too much.
  it('from 08:10 to 16:20 with half an hour of breaks are 7 h 40, and 525.17 at 68.50', () => {
    expect(shownBy(clockedHours, { ...day(sil), rate: 68.5 })).toEqual({
      worked: '7 h 40',
      hours: '7.67',
      minutes: '460',
      money: '525.17',
    })
  })

  it('of two people for three hours are six', () => {
    const tobin = { person: 'Tobin', in: '9:00', out: '12:00', breaks: 0 }
    expect(shownBy(clockedHours, day({ ...tobin, person: 'Sil' }, tobin))).toMatchObject({
      worked: '6 h 00',
    })
  })

  it('go across midnight and the change of the clock by day and zone', () => {
    const night = { ...sil, in: '2026-03-28T22:00', out: '2026-03-29T06:00', breaks: 0 }
    const london = { ...day(night), zone: 'Europe/London' }
    // The clocks went forward at 01:00 that night.
    expect(shownBy(clockedHours, london)).toMatchObject({ worked: '7 h 00' })
    expect(refusedFor(clockedHours, day(night))).toContain('zone')
    expect(refusedFor(clockedHours, { ...london, zone: 'Ambrey' })).toEqual(['zone'])
    expect(refusedFor(clockedHours, day({ ...sil, in: '22:00', out: '06:00' }))).toEqual([
      'entries.0.out',
    ])
  })

  it('are refused where a person is on two stages at once, one after another is well', () => {
    const other = { ...sil, in: '16:00', out: '18:00', breaks: 0, stage: '12' }
    expect(refusedFor(clockedHours, day(sil, other))).toEqual(['entries.1.in'])
    expect(refusedFor(clockedHours, day(sil, { ...other, in: '16:20' }))).toEqual([])
    expect(refusedFor(clockedHours, day(sil, { ...other, person: 'Tobin' }))).toEqual([])
  })

  it('over sixteen at a stretch are asked about, and go on with a yes', () => {
    const asked = askedAbout(clockedHours, day({ ...sil, in: '04:00', out: '22:00' }))
    expect(asked?.field).toBe('entries.0.out')
    expect(shownBy(clockedHours, asked?.next[0])).toMatchObject({ worked: '17 h 30' })
  })

  it('ask about 7.40, and refuse a break longer than the day and a half penny an hour', () => {
    const asked = askedAbout(clockedHours, day({ ...sil, in: '7.40' }))
    expect(asked?.field).toBe('entries.0.in')
    expect(shownBy(clockedHours, asked?.next[0])).toMatchObject({ worked: '8 h 10' })
    expect(refusedFor(clockedHours, day({ ...sil, breaks: 500 }))).toEqual(['entries.0.breaks'])
    expect(refusedFor(clockedHours, { ...day(sil), rate: 68.505 })).toEqual(['rate'])
  })
})

describe('times charged by a rule', () => {
  const times = (rule: string, ...all: readonly string[]) => ({
    times: all.map((time) => ({ time, people: 1 })),
    rule,
    rate: 72,
  })

  it.each([
    ['15 min up', '135', '162.00'],
    ['none', '110', '132.00'],
    ['6 min up', '120', '144.00'],
    ['15 min nearest', '105', '126.00'],
  ])('of 25, 35 and 50 minutes by %s', (rule, minutes, money) => {
    expect(shownBy(chargedHours, times(rule, '0:25', '0:35', '0:50'))).toMatchObject({
      minutes,
      money,
    })
  })

  it('count each person', () => {
    const two = { times: [{ time: '3:00', people: 2 }], rule: 'none', rate: 72 }
    expect(shownBy(chargedHours, two)).toMatchObject({ charged: '6 h 00', money: '432.00' })
  })

  it('ask whether 7.40 is 7 h 40 or 7.4 h, which is 7 h 24', () => {
    const asked = askedAbout(chargedHours, times('none', '7.40'))
    expect(asked?.next.map((next) => shownBy(chargedHours, next).charged)).toEqual([
      '7 h 40',
      '7 h 24',
    ])
  })

  it('by the minute are never a penny from the exact money', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 960 }),
        fc.integer({ min: 0, max: 20_000 }),
        (minutes, pence) => {
          const time = `${Math.floor(minutes / 60)}:${String(minutes % 60).padStart(2, '0')}`
          const money = valueBy(
            chargedHours,
            { times: [{ time, people: 1 }], rule: 'none', rate: pence / 100 },
            'money',
          )
          expect(Math.abs(money * 100 - (minutes * pence) / 60)).toBeLessThanOrEqual(0.5 + 1e-6)
        },
      ),
    )
  })

  it('are refused as words', () => {
    expect(refusedFor(chargedHours, times('none', 'a while'))).toEqual(['times.0.time'])
  })
})

describe('estimates', () => {
  it('of 32.5 h sold, 29 worked, 39 attended are 112.1 % and 83.3 %', () => {
    const hours = { sold: 32.5, worked: 29, attended: 39 }
    expect(shownBy(efficiency, hours)).toEqual({ efficiency: '112.1', productivity: '83.3' })
    expect(refusedFor(efficiency, { ...hours, attended: 20 })).toEqual(['attended'])
  })

  it('of 8, 12 and 22 h are 13.00 with a deviation of 2.33', () => {
    expect(shownBy(threePoint, { least: 8, likely: 12, most: 22 })).toEqual({
      mean: '13.00',
      deviation: '2.33',
    })
    expect(refusedFor(threePoint, { least: 8, likely: 7, most: 22 })).toEqual(['likely'])
  })

  it('to the finish are what was worked and what the hand says is left', () => {
    expect(shownBy(timeToFinish, { worked: 10, left: 6, estimate: 12 })).toEqual({
      finish: '16.00',
      over: '4.00',
    })
    expect(refusedFor(timeToFinish, { worked: 10 })).toEqual(['left'])
  })
})
