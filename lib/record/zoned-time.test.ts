import { describe, expect, it } from 'vitest'
import { civilDateIn, daysAfter, instantAt, mondayOf, wallTime } from './zoned-time.ts'

describe('instantAt', () => {
  it('reads the clock on the wall of the shop, summer and winter', () => {
    expect(instantAt('2027-02-10T16:10', 'Europe/London')).toBe('2027-02-10T16:10:00.000Z')
    expect(instantAt('2027-06-10T16:10', 'Europe/London')).toBe('2027-06-10T15:10:00.000Z')
    expect(instantAt('2027-06-10T00:00', 'Pacific/Auckland')).toBe('2027-06-09T12:00:00.000Z')
    expect(instantAt('2027-01-10T08:30', 'America/St_Johns')).toBe('2027-01-10T12:00:00.000Z')
  })

  it('takes an hour that is shown twice the first time', () => {
    expect(instantAt('2027-10-31T01:30', 'Europe/London')).toBe('2027-10-31T00:30:00.000Z')
  })

  it('takes an hour that is skipped for the hour after the skip', () => {
    expect(instantAt('2027-03-28T01:30', 'Europe/London')).toBe('2027-03-28T01:30:00.000Z')
  })

  it('takes half a time for none', () => {
    expect(instantAt('2027-03-28', 'Europe/London')).toBeNull()
    expect(instantAt('2027-13-28T01:00', 'Europe/London')).toBeNull()
  })

  it('is undone by the clock on the wall', () => {
    for (const wall of ['2027-03-28T03:00', '2027-10-31T02:30', '2026-12-31T23:59']) {
      expect(wallTime(instantAt(wall, 'Europe/Berlin') ?? '', 'Europe/Berlin')).toBe(wall)
    }
  })
})

describe('days', () => {
  it('counts on over months and finds the Monday', () => {
    expect(daysAfter('2027-02-27', 3)).toBe('2027-03-02')
    expect(mondayOf('2027-02-28')).toBe('2027-02-22')
    expect(mondayOf('2027-02-22')).toBe('2027-02-22')
    expect(civilDateIn('2027-06-09T12:00:00.000Z', 'Pacific/Auckland')).toBe('2027-06-10')
  })
})
