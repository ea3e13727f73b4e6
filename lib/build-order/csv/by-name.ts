import { folded } from '../../record/same-name.ts'

/** Everything that has a name, by it. */
export function grouped<T>(
  pairs: readonly (readonly [string, T])[],
): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>()
  for (const [name, one] of pairs) {
    const known = groups.get(name)
    if (known === undefined) groups.set(name, [one])
    else known.push(one)
  }
  return groups
}

/** Finds what has a name: as it is written, else in any case and with any blanks. Several, where several have it. */
export function byName<T>(
  pairs: readonly (readonly [string, T])[],
): (name: string) => readonly T[] {
  const exactly = grouped(pairs)
  const inAnyCase = grouped(pairs.map(([name, one]) => [folded(name), one] as const))
  return (name) => exactly.get(name) ?? inAnyCase.get(folded(name)) ?? []
}
