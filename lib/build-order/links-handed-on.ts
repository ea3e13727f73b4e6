import type { Link } from '../record/entities/work.ts'
import type { NewId, StageId } from '../record/ids.ts'

/** The shorter of two windows, where null is none. */
const shorter = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b)

/** The longer of two cures: the one that is given for the colder metal, where only one is a cure that one. */
const colder = (a: number | null, b: number | null): number | null =>
  a === null ? b : b === null ? a : Math.min(a, b)

/** One link that asks all that either of two asks; it keeps the first's ends. */
export const stricter = (kept: Link, other: Link): Link => ({
  ...kept,
  leastLagHours: Math.max(kept.leastLagHours, other.leastLagHours),
  greatestLagHours: shorter(kept.greatestLagHours, other.greatestLagHours),
  why: kept.why ?? other.why,
  safety: kept.safety || other.safety,
  curesAt: colder(kept.curesAt, other.curesAt),
})

const withWindowOf = (kept: Link, other: Link): Link => ({
  ...kept,
  greatestLagHours: shorter(kept.greatestLagHours, other.greatestLagHours),
})

/**
 * What a stage waited for, handed on to what waited for it, so that nothing starts earlier once it is out of the way; where both were
 * linked already, the longer least lag and the shorter greatest lag hold. `keys`: it was keying, so its window is again that of the coat below.
 */
export function handedOn(
  links: readonly Link[],
  stage: StageId,
  newId: NewId,
  keys = false,
): Link[] {
  const before = links.filter((link) => link.to === stage)
  const after = links.filter((link) => link.from === stage)
  return before.flatMap((first) =>
    after.map((second): Link => {
      const direct = links.find((link) => link.from === first.from && link.to === second.to)
      const asked = keys ? withWindowOf(first, second) : first
      return direct === undefined
        ? { ...asked, id: newId('lnk'), to: second.to }
        : stricter(direct, asked)
    }),
  )
}
