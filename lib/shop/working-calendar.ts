import type { Shop } from '../record/entities/people.ts'
import { instantAt } from '../record/zoned-time.ts'

/** Working time as a plan reckons with it. Times are milliseconds since 1970, as of `Date`; hours are hours of work. */
export interface WorkingCalendar {
  /** Hours of a whole working day. */
  readonly dayHours: number
  /** The first moment from `ms` on at which there is work. */
  readonly opensFrom: (ms: number) => number
  /** When so many hours are over that begin at `ms`, or when the shop next opens; at once where there are none. */
  readonly after: (ms: number, hours: number) => number
  /** The latest moment at which so many hours can begin and be over by `ms`. */
  readonly before: (ms: number, hours: number) => number
  /** Working hours between two moments; below none where the second is earlier. */
  readonly between: (from: number, to: number) => number
}

const MINUTE_MS = 60_000
const HOUR_MS = 60 * MINUTE_MS
const DAY_MS = 24 * HOUR_MS
/** A Monday, from which working days are counted. */
const FIRST_MONDAY_MS = Date.UTC(1970, 0, 5)

const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))

/** Work at any hour of any day: for what only the clock does. */
export const theClock: WorkingCalendar = {
  dayHours: 24,
  opensFrom: (ms) => ms,
  after: (ms, hours) => ms + Math.round(hours * HOUR_MS),
  before: (ms, hours) => ms - Math.round(hours * HOUR_MS),
  between: (from, to) => (to - from) / HOUR_MS,
}

/**
 * The working days of a shop by its opening hours and the clock on its wall; Saturdays and Sundays are off (the shop's own
 * closures aren't known yet). Days are reckoned when they are asked for, and kept.
 */
export function workingCalendar({
  opensAt,
  closesAt,
  timeZone,
}: Pick<Shop, 'opensAt' | 'closesAt' | 'timeZone'>): WorkingCalendar {
  const aDay = Math.max(60, minutesOf(closesAt) - minutesOf(opensAt)) * MINUTE_MS
  const openings = new Map<number, number>()

  /** When the shop opens on its `n`th working day. */
  function opening(n: number): number {
    const known = openings.get(n)
    if (known !== undefined) return known
    const date = new Date(FIRST_MONDAY_MS + (Math.floor(n / 5) * 7 + mod(n, 5)) * DAY_MS)
    const at = instantAt(`${date.toISOString().slice(0, 10)}T${opensAt}`, timeZone)
    const ms = at === null ? date.getTime() : Date.parse(at)
    openings.set(n, ms)
    return ms
  }

  /** Working time from the first Monday up to a moment, in ms. */
  function worked(ms: number): number {
    const days = Math.floor((ms - FIRST_MONDAY_MS) / DAY_MS)
    // A zone may be a day ahead of UTC: from the day after, back to the last that had opened.
    let n = Math.floor(days / 7) * 5 + Math.min(mod(days, 7), 5) + 1
    while (opening(n) > ms) n--
    return n * aDay + Math.min(ms - opening(n), aDay)
  }

  /** The moment at which so much is worked and more can be. */
  const asStart = (work: number): number => opening(Math.floor(work / aDay)) + mod(work, aDay)
  /** The moment at which so much has just been worked. */
  const asEnd = (work: number): number => asStart(work - 1) + 1
  const toMs = (hours: number): number => Math.round(hours * HOUR_MS)

  return {
    dayHours: aDay / HOUR_MS,
    opensFrom: (ms) => asStart(worked(ms)),
    after: (ms, hours) =>
      toMs(hours) === 0 ? asStart(worked(ms)) : asEnd(worked(ms) + toMs(hours)),
    before(ms, hours) {
      const begins = asStart(worked(ms) - toMs(hours))
      // Where nothing is to be done, it is done while the doors are still open.
      return begins <= ms ? begins : asStart(worked(ms) - 1)
    },
    between: (from, to) => (worked(to) - worked(from)) / HOUR_MS,
  }
}

const mod = (n: number, by: number): number => ((n % by) + by) % by
