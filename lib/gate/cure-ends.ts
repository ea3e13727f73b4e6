import type { MetalReading } from '../record/entities/evidence.ts'
import { Instant } from '../record/scalars.ts'
import { cureFactor } from '../sums/cure.ts'

const HOUR_MS = 3_600_000

/** When a cure has run, and what the metal was at by the last reading that counted. */
export interface CureEnd {
  /** Null while the metal is too cold to cure at all. */
  readonly until: Instant | null
  readonly metal: number | null
}

/**
 * When a cure of so many hours at `reference` °C has run from `end` on, by the metal's temperatures as they were logged: each holds until the next, and
 * before the first the clock counts. Warm metal never shortens it; under 10 °C nothing cures. What holds now is taken to hold on.
 */
export function cureEnds(
  end: Instant,
  hours: number,
  reference: number | null,
  log: readonly MetalReading[],
): CureEnd {
  const from = Date.parse(end)
  const clock = from + hours * HOUR_MS
  const readings = reference === null ? [] : [...log].sort((a, b) => byTime(a.takenAt, b.takenAt))
  if (reference === null || readings.length === 0) return { until: instant(clock), metal: null }
  const before = readings.filter((reading) => Date.parse(reading.takenAt) <= from).at(-1)
  const later = readings.filter((reading) => Date.parse(reading.takenAt) > from)
  let left = hours
  let at = from
  let metal = before?.celsius ?? null
  for (const next of later) {
    const factor = slower(metal, reference)
    const spell = (Date.parse(next.takenAt) - at) / HOUR_MS
    if (spell / factor >= left) return ended(at + left * factor * HOUR_MS, clock, metal)
    left -= spell / factor
    at = Date.parse(next.takenAt)
    metal = next.celsius
  }
  const factor = slower(metal, reference)
  return Number.isFinite(factor)
    ? ended(at + left * factor * HOUR_MS, clock, metal)
    : { until: null, metal }
}

/** How much longer than by the clock, never less. */
const slower = (metal: number | null, reference: number): number =>
  metal === null ? 1 : Math.max(1, cureFactor(metal, reference))

const ended = (ms: number, clock: number, metal: number | null): CureEnd => ({
  until: instant(Math.max(ms, clock)),
  metal,
})

/** To the millisecond, upward: it has run then, and not a moment before. */
const instant = (ms: number): Instant => Instant.parse(new Date(Math.ceil(ms)).toISOString())
const byTime = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0)
