import { Instant } from '../record/scalars.ts'

const HOUR_MS = 3_600_000

/** That many hours of the clock after an instant: cure runs on Sundays too. */
export const hoursAfter = (instant: Instant, hours: number): Instant =>
  Instant.parse(new Date(Date.parse(instant) + hours * HOUR_MS).toISOString())
