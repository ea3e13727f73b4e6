import type { Check } from '../record/entities/work.ts'

/** Whether a reading lies within the limits of its check. Limits are inclusive; an open end has none. */
export const isWithin = (check: Pick<Check, 'least' | 'greatest'>, value: number): boolean =>
  (check.least === null || value >= check.least) &&
  (check.greatest === null || value <= check.greatest)
