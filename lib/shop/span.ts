import { type Condition, plain } from '../record/condition.ts'
import type { Instant } from '../record/scalars.ts'

/** From one instant up to another; the end itself is free again. */
export interface Span {
  readonly from: Instant
  readonly to: Instant
}

/** Do the spans share a moment? One that ends when the other begins doesn't. */
export const overlap = (a: Span, b: Span): boolean => a.from < b.to && b.from < a.to

/** Lies `inner` wholly in `outer`? */
export const within = (inner: Span, outer: Span): boolean =>
  outer.from <= inner.from && inner.to <= outer.to

/** The condition that a span ends before it begins, or lasts no time; none where it is well. */
export function spanConditions(entity: string, span: Span): Condition[] {
  if (span.from < span.to) return []
  const why = 'span ends before it begins'
  return [{ ...plain(entity), rule: 'time', field: 'to', why, limit: span.from }]
}
