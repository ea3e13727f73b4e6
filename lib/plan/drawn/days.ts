import type { CivilDate, Instant } from '../../record/scalars.ts'
import { civilDateIn, daysAfter, instantAt, mondayOf } from '../../record/zoned-time.ts'

const DAY_MS = 86_400_000

/** Whole weeks of civil days in one zone, on which a drawing lies. */
export interface Days {
  readonly dates: readonly CivilDate[]
  /** How far along a moment lies: 0 is the beginning of the first day, 1.5 the noon of the second. Outside, the nearer end. */
  readonly along: (instant: Instant) => number
}

/** The weeks that hold both moments, Monday first. Days of 23 and 25 hours count as one. */
export function daysBetween(from: Instant, to: Instant, zone: string): Days {
  const first = mondayOf(civilDateIn(from, zone))
  const last = mondayOf(civilDateIn(to, zone))
  const weeks = Math.round((Date.parse(last) - Date.parse(first)) / (7 * DAY_MS)) + 1
  const dates = Array.from({ length: weeks * 7 }, (_, n) => daysAfter(first, n))
  const starts = new Map<number, number>()
  const startOf = (n: number): number => {
    const known = starts.get(n)
    if (known !== undefined) return known
    const midnight = instantAt(`${daysAfter(first, n)}T00:00`, zone)
    const ms = midnight === null ? Date.parse(first) + n * DAY_MS : Date.parse(midnight)
    starts.set(n, ms)
    return ms
  }
  const along = (instant: Instant): number => {
    const ms = Date.parse(instant)
    let n = Math.floor((ms - startOf(0)) / DAY_MS) + 1
    while (n > 0 && startOf(n) > ms) n--
    const day = startOf(n + 1) - startOf(n)
    return Math.min(dates.length, Math.max(0, n + (ms - startOf(n)) / day))
  }
  return { dates, along }
}
