import { CivilDate, type Instant } from '../lib/record/scalars.ts'
import { civilDateIn, daysAfter, instantAt, mondayOf } from '../lib/record/zoned-time.ts'

/** The zone of every shop of the demonstration. */
export const ZONE = 'Europe/London'
const WEEKDAYS = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri']

/** Dates of the demonstration, counted from today; all fall in working hours. */
export interface Calendar {
  /**
   * `-31 Tue 8:30`: a weekday, weeks from this one. `d-2 9`: working days from today, which itself is none of them;
   * `d+1` is the first after today.
   */
  readonly at: (when: string) => Instant
  /** The civil date so many days from today. */
  readonly date: (days: number) => CivilDate
}

/** The calendar as it stands at `now`. */
export function calendarAt(now: Instant): Calendar {
  const today = civilDateIn(now, ZONE)
  const at = (when: string): Instant => {
    const [day, hour = '', minute = '00'] = dayAndTime(when, today)
    const found = instantAt(`${day}T${hour.padStart(2, '0')}:${minute}`, ZONE)
    if (found === null) throw new Error(`${when} is no time of the demonstration`)
    return found
  }
  return {
    at,
    date: (days) => daysAfter(today, days),
  }
}

/** Minutes later than an instant. */
export const plus = (instant: Instant, minutes: number): Instant => {
  const wall = new Date(Date.parse(instant) + minutes * 60_000).toISOString().slice(0, 16)
  return instantAt(wall, 'UTC') ?? instant
}

function dayAndTime(when: string, today: CivilDate): readonly string[] {
  const byWeek = /^([+-]?\d+) (\w{3}) (\d{1,2})(?::(\d\d))?$/.exec(when)
  if (byWeek !== null) {
    const [, weeks = '0', weekday = '', hour = '', minute = '00'] = byWeek
    const day = daysAfter(mondayOf(today), 7 * Number(weeks) + WEEKDAYS.indexOf(weekday))
    return [day, hour, minute]
  }
  const byDay = /^d([+-]\d+) (\d{1,2})(?::(\d\d))?$/.exec(when)
  if (byDay === null) throw new Error(`${when} is no time of the demonstration`)
  const [, days = '0', hour = '', minute = '00'] = byDay
  return [workingDay(today, Number(days)), hour, minute]
}

function workingDay(today: CivilDate, days: number): CivilDate {
  const step = Math.sign(days)
  let day = today
  for (let left = Math.abs(days); left > 0; ) {
    day = daysAfter(day, step)
    const weekday = new Date(`${day}T00:00:00.000Z`).getUTCDay()
    if (weekday !== 0 && weekday !== 6) left--
  }
  return CivilDate.parse(day)
}
