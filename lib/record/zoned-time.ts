import { CivilDate, Instant } from './scalars.ts'

const MINUTE_MS = 60_000
const formats = new Map<string, Intl.DateTimeFormat>()

function formatOf(zone: string): Intl.DateTimeFormat {
  const known = formats.get(zone)
  if (known !== undefined) return known
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone: zone,
    hourCycle: 'h23',
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    hour: '2-digit',
    minute: '2-digit',
  })
  formats.set(zone, format)
  return format
}

/** What a clock on the wall in `zone` shows at an instant, as a field takes it: `2026-11-25T08:17`. */
export function wallTime(instant: string, zone: string): string {
  const part = new Map(
    formatOf(zone)
      .formatToParts(new Date(instant))
      .map(({ type, value }) => [type, value]),
  )
  const date = `${part.get('year')?.padStart(4, '0')}-${part.get('month')}-${part.get('day')}`
  return `${date}T${part.get('hour')}:${part.get('minute')}`
}

/** The day in `zone` at an instant. */
export const civilDateIn = (instant: string, zone: string): CivilDate =>
  CivilDate.parse(wallTime(instant, zone).slice(0, 10))

/** Minutes that the wall's clock is ahead of UTC at that moment. */
const aheadMs = (ms: number, zone: string): number =>
  Date.parse(`${wallTime(new Date(ms).toISOString(), zone)}:00.000Z`) -
  Math.floor(ms / MINUTE_MS) * MINUTE_MS

/**
 * The instant at which a clock on the wall in `zone` shows `wall` (`2026-11-25T08:17`), or null where the text is no time.
 * An hour that is shown twice is taken the first time; an hour that is skipped gives the moment after the skip.
 */
export function instantAt(wall: string, zone: string): Instant | null {
  const utc = Date.parse(`${wall}:00.000Z`)
  if (!/^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/.test(wall) || Number.isNaN(utc)) return null
  const offsets = [utc - 86_400_000, utc + 86_400_000].map((ms) => aheadMs(ms, zone))
  const candidates = offsets.map((offset) => utc - offset).toSorted((a, b) => a - b)
  const exact = candidates.find((ms) => wallTime(new Date(ms).toISOString(), zone) === wall)
  const ms = exact ?? candidates.at(-1)
  return ms === undefined ? null : Instant.parse(new Date(ms).toISOString())
}

/** The day `days` after `date`. */
export function daysAfter(date: string, days: number): CivilDate {
  const ms = Date.parse(`${date}T00:00:00.000Z`) + days * 86_400_000
  return CivilDate.parse(new Date(ms).toISOString().slice(0, 10))
}

/** The Monday of the week that holds `date`. */
export function mondayOf(date: string): CivilDate {
  const weekday = new Date(`${date}T00:00:00.000Z`).getUTCDay()
  return daysAfter(date, -((weekday + 6) % 7))
}
