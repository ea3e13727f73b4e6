import { describe, expect, it } from 'vitest'
import { CivilDate, Instant } from '../record/scalars.ts'
import {
  ago,
  day,
  dayOfMonth,
  exactSpan,
  longDay,
  moment,
  monthAndYear,
  sameDay,
  since,
  span,
  stampMoment,
  timeOfDay,
} from './dates.ts'

const at = (text: string) => Instant.parse(text)
const here = {
  locale: 'en-GB',
  timeZone: 'Europe/London',
  now: at('2027-02-11T09:30:00.000Z'),
}

describe('dates as they are read in a shop', () => {
  it('writes a day without a comma, and its year only when it is not this one', () => {
    expect(day(at('2027-02-16T12:00:00.000Z'), here)).toBe('Tue 16 Feb')
    expect(day(at('2026-09-14T12:00:00.000Z'), here)).toBe('Mon 14 Sep 2026')
  })

  it('writes a month over its days, and a day under its month', () => {
    expect(monthAndYear(CivilDate.parse('2027-09-01'), here)).toBe('Sep 2027')
    expect(dayOfMonth(CivilDate.parse('2027-02-16'), here, false)).toBe('16')
    expect(dayOfMonth(CivilDate.parse('2027-02-16'), here, true)).toBe('Tue 16')
  })

  it('reads an instant in the shop’s zone, and a civil date in none', () => {
    const summer = { ...here, now: at('2027-07-01T12:00:00.000Z') }
    expect(day(at('2027-06-10T23:30:00.000Z'), summer)).toBe('Fri 11 Jun')
    expect(timeOfDay(at('2027-06-10T23:30:00.000Z'), summer)).toBe('00:30')
    const west = { ...here, timeZone: 'America/New_York' }
    expect(day(CivilDate.parse('2027-02-26'), west)).toBe('Fri 26 Feb')
  })

  it('says the time alone for what happened today', () => {
    expect(moment(at('2027-02-11T08:40:00.000Z'), here)).toBe('08:40 today')
    expect(moment(at('2027-02-09T08:05:00.000Z'), here)).toBe('Tue 9 Feb, 08:05')
    expect(since(at('2027-02-11T08:40:00.000Z'), here)).toBe('since 08:40 today')
    expect(since(at('2027-02-02T08:40:00.000Z'), here)).toBe('since Tue 2 Feb')
  })

  it('always puts the year on a stamp', () => {
    expect(stampMoment(at('2027-02-11T09:14:00.000Z'), here)).toBe('11 Feb 2027 · 09:14')
    expect(longDay(here.now, here)).toBe('Thursday 11 February 2027')
  })

  it('says a span by its days, and within one day by its hours', () => {
    const from = at('2027-02-23T08:00:00.000Z')
    expect(span(from, at('2027-03-02T17:00:00.000Z'), here)).toBe('Tue 23 Feb to Tue 2 Mar')
    expect(span(from, at('2027-02-23T12:00:00.000Z'), here)).toBe('Tue 23 Feb, 08:00 to 12:00')
    expect(exactSpan(from, at('2027-03-02T17:00:00.000Z'), here)).toBe(
      'Tue 23 Feb, 08:00 to Tue 2 Mar, 17:00',
    )
  })

  it('says how long ago a live change was made', () => {
    expect(ago(at('2027-02-11T09:29:30.000Z'), here)).toBe('just now')
    expect(ago(at('2027-02-11T09:26:00.000Z'), here)).toBe('4 min ago')
    expect(ago(at('2027-02-09T09:26:00.000Z'), here)).toBe('Tue 9 Feb, 09:26')
  })

  it('keeps the order and signs of another locale', () => {
    const abroad = { ...here, locale: 'de-DE', timeZone: 'Europe/Berlin' }
    expect(day(at('2027-02-16T12:00:00.000Z'), abroad)).toBe('Di., 16. Feb.')
  })

  it('counts a day by the wall, also across midnight in UTC', () => {
    const east = { ...here, timeZone: 'Asia/Tokyo' }
    expect(sameDay(at('2027-02-11T14:00:00.000Z'), at('2027-02-11T15:30:00.000Z'), east)).toBe(
      false,
    )
  })
})
