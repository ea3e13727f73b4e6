import type { Span } from './span.ts'

/** Where a span lies on a strip of days: 0 is the strip's beginning, 1.5 the noon of its second day. */
export interface OnStrip {
  readonly from: number
  readonly to: number
}

/** How far into the strip an instant is, in days; days of 23 and 25 hours count as one. */
function along(instant: string, days: readonly string[]): number {
  const ms = Date.parse(instant)
  const at = days.findLastIndex((day) => Date.parse(day) <= ms)
  if (at < 0) return 0
  const start = Date.parse(days[at] ?? instant)
  const end = Date.parse(days[at + 1] ?? instant)
  return at >= days.length - 1 ? days.length - 1 : at + (ms - start) / (end - start)
}

/**
 * The part of a span that a strip of days shows, or null where it lies outside. `days` are the instants at which each day
 * begins in the shop's zone, and that at which the last one ends.
 */
export function onStrip(span: Span, days: readonly string[]): OnStrip | null {
  const from = along(span.from, days)
  const to = along(span.to, days)
  return from < to ? { from, to } : null
}

/** Spans in as few rows as keep them apart, in the order in which they begin: claims for the same hours lie under each other. */
export function inRows<S extends Span>(spans: readonly S[]): readonly (readonly S[])[] {
  const rows: S[][] = []
  for (const span of spans.toSorted((a, b) => a.from.localeCompare(b.from))) {
    const row = rows.find((candidate) => (candidate.at(-1)?.to ?? '') <= span.from)
    if (row === undefined) rows.push([span])
    else row.push(span)
  }
  return rows
}
