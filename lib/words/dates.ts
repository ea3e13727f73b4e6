import type { CivilDate, Instant } from '../record/scalars.ts'
import type { Place } from './reader.ts'

type When = Instant | CivilDate
const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS

const made = new Map<string, Intl.DateTimeFormat>()
function format(
  locale: string,
  timeZone: string,
  options: Intl.DateTimeFormatOptions,
): Intl.DateTimeFormat {
  const key = `${locale} ${timeZone} ${JSON.stringify(options)}`
  let formatter = made.get(key)
  if (formatter === undefined) {
    formatter = new Intl.DateTimeFormat(locale, { ...options, timeZone })
    made.set(key, formatter)
  }
  return formatter
}

/** A civil date has no zone: it is read in UTC, where it was put. */
const zoneOf = (when: When, place: Place): string => (when.includes('T') ? place.timeZone : 'UTC')

const sameYear = (when: When, place: Place): boolean =>
  format('en-GB', zoneOf(when, place), { year: 'numeric' }).format(Date.parse(when)) ===
  format('en-GB', place.timeZone, { year: 'numeric' }).format(Date.parse(place.now))

/** British English as our look has it: no comma after the weekday, and September in three letters like the rest. */
function spell(when: When, place: Place, options: Intl.DateTimeFormatOptions): string {
  const formatter = format(place.locale, zoneOf(when, place), options)
  if (!place.locale.startsWith('en-GB')) return formatter.format(Date.parse(when))
  return formatter
    .formatToParts(Date.parse(when))
    .map(({ type, value }) => {
      if (type === 'literal') return ' '
      return type === 'month' && value === 'Sept' ? 'Sep' : value
    })
    .join('')
}

/** `Tue 16 Feb`; with the year when it isn't this one. */
export function day(when: When, place: Place): string {
  return spell(when, place, {
    weekday: 'short',
    day: 'numeric',
    month: 'short',
    ...(sameYear(when, place) ? {} : { year: 'numeric' }),
  })
}

/** `Thursday 11 February 2027` */
export const longDay = (when: When, place: Place): string =>
  spell(when, place, { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' })

/** `Feb 2027` */
export const monthAndYear = (when: When, place: Place): string =>
  spell(when, place, { month: 'short', year: 'numeric' })

/** `16`, or with its weekday `Tue 16`: over days whose month stands above them. */
export const dayOfMonth = (when: When, place: Place, weekday: boolean): string =>
  spell(when, place, weekday ? { weekday: 'short', day: 'numeric' } : { day: 'numeric' })

/** `08:40` */
export const timeOfDay = (when: Instant, place: Place): string =>
  format(place.locale, place.timeZone, {
    hour: '2-digit',
    minute: '2-digit',
    hourCycle: 'h23',
  }).format(Date.parse(when))

/** The day in the place's own zone, as a civil date: `2026-11-25`. */
export const civil = (when: Instant, place: Place): string =>
  format('en-CA', place.timeZone, { year: 'numeric', month: '2-digit', day: '2-digit' }).format(
    Date.parse(when),
  )

/** Whether two instants fall on one day in the shop’s zone. */
export const sameDay = (one: Instant, other: Instant, place: Place): boolean =>
  civil(one, place) === civil(other, place)

/** `Tue 16 Feb, 08:40`; of today only the time: `08:40 today`. */
export const moment = (when: Instant, place: Place): string =>
  sameDay(when, place.now, place)
    ? `${timeOfDay(when, place)} today`
    : `${day(when, place)}, ${timeOfDay(when, place)}`

/** On a stamp the year always stands: `11 Feb 2027 · 09:14`. */
export const stampMoment = (when: Instant, place: Place): string =>
  `${spell(when, place, { day: 'numeric', month: 'short', year: 'numeric' })} · ${timeOfDay(when, place)}`

/** `since Tue 2 Feb`, `since 08:40 today` */
export const since = (when: Instant, place: Place): string =>
  sameDay(when, place.now, place)
    ? `since ${timeOfDay(when, place)} today`
    : `since ${day(when, place)}`

/** How long ago a live change was made: `just now`, `4 min ago`, then the moment. */
export function ago(when: Instant, place: Place): string {
  const ms = Date.parse(place.now) - Date.parse(when)
  if (ms < MINUTE_MS) return 'just now'
  if (ms < HOUR_MS) return `${Math.floor(ms / MINUTE_MS)} min ago`
  return moment(when, place)
}

/** `Tue 23 Feb to Tue 2 Mar`; within a day `Tue 23 Feb, 08:00 to 12:00`. */
export const span = (from: Instant, to: Instant, place: Place): string =>
  sameDay(from, to, place)
    ? `${day(from, place)}, ${timeOfDay(from, place)} to ${timeOfDay(to, place)}`
    : `${day(from, place)} to ${day(to, place)}`

/** As `span`, with the time of day at both ends. */
export const exactSpan = (from: Instant, to: Instant, place: Place): string =>
  sameDay(from, to, place)
    ? span(from, to, place)
    : `${day(from, place)}, ${timeOfDay(from, place)} to ${day(to, place)}, ${timeOfDay(to, place)}`
