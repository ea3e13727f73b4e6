import type { PartyId } from '../../record/ids.ts'
import type { BuildOrderImport } from '../build-order-import.ts'
import type { Resolved, Unknown } from './resolve-lines.ts'

const keyOf = (line: number): string => `line${line}`

/** Input of `buildOrder.import` for those lines; null where there is none. A hold point is called as its stage is. */
export function importOf(
  kept: readonly Resolved[],
  shops: readonly Unknown[],
  assemblies: readonly Unknown[],
  custodian: PartyId,
  acceptExisting: boolean,
): BuildOrderImport | null {
  if (kept.length === 0) return null
  const used = new Set(
    kept.flatMap((line) => [line.party, ...line.holds.map((hold) => hold.party)]),
  )
  return {
    parties: shops.filter(({ key }) => used.has(key)).map(({ key, name }) => ({ key, name })),
    assemblies: assemblies.map(({ key, name }) => ({ key, name, custodian })),
    stages: kept.map(({ read, party, assemblies: worked }) => ({
      key: keyOf(read.line),
      name: read.name,
      party,
      assemblies: [...worked],
      hoursLeast: read.hoursLeast,
      hoursLikely: read.hoursLikely,
      hoursMost: read.hoursMost,
    })),
    links: kept.flatMap(({ read, after }) =>
      after.map(({ from, leastLagHours, greatestLagHours }) => ({
        from: typeof from === 'number' ? keyOf(from) : from,
        to: keyOf(read.line),
        leastLagHours,
        greatestLagHours,
      })),
    ),
    checks: kept.flatMap(({ read }) =>
      read.checks.map((check) => ({ stage: keyOf(read.line), ...check })),
    ),
    holds: kept.flatMap(({ read, holds }) =>
      holds.map((hold) => ({ stage: keyOf(read.line), name: read.name, ...hold })),
    ),
    ...(acceptExisting ? { acceptExisting } : {}),
  }
}
