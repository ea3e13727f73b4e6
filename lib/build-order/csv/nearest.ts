import { distance } from 'fastest-levenshtein'
import { folded } from '../../record/same-name.ts'

/** With more names than this, only those that share the rarest three letters are measured. */
const MEASURED_AT_MOST = 100

interface Known {
  readonly name: string
  readonly letters: string
}

const threes = (name: string): string[] => {
  const padded = `  ${name} `
  return Array.from({ length: padded.length - 2 }, (_, i) => padded.slice(i, i + 3))
}

/** A third of the letters may differ, and two always. */
const isNear = (name: string, differing: number): boolean =>
  differing <= Math.max(2, Math.floor(name.length / 3))

/**
 * Finds the name that was probably meant, or null. However many names there are, one look-up measures at most a hundred,
 * so that a file of five thousand lines with a fault in each is read as quickly per line as a short one.
 */
export function nearestAmong(
  names: readonly string[],
  measure: (a: string, b: string) => number = distance,
): (name: string) => string | null {
  const known = [...new Set(names)].map((name): Known => ({ name, letters: folded(name) }))
  const byThree = new Map<string, Known[]>()
  if (known.length > MEASURED_AT_MOST) {
    for (const one of known) {
      for (const three of new Set(threes(one.letters))) {
        const group = byThree.get(three)
        if (group === undefined) byThree.set(three, [one])
        else group.push(one)
      }
    }
  }
  const candidates = (letters: string): Iterable<Known> => {
    if (known.length <= MEASURED_AT_MOST) return known
    const groups = [...new Set(threes(letters))]
      .map((three) => byThree.get(three) ?? [])
      .sort((a, b) => a.length - b.length)
    const picked = new Set<Known>()
    for (const group of groups) {
      for (const one of group.slice(0, MEASURED_AT_MOST)) {
        if (picked.size === MEASURED_AT_MOST) return picked
        picked.add(one)
      }
    }
    return picked
  }
  const found = new Map<string, string | null>()
  return (name) => {
    const letters = folded(name).slice(0, 200)
    const before = found.get(letters)
    if (before !== undefined) return before
    let best: string | null = null
    let least = Number.POSITIVE_INFINITY
    for (const one of candidates(letters)) {
      const differing = measure(letters, one.letters)
      if (differing < least) {
        least = differing
        best = one.name
      }
    }
    const answer = isNear(letters, least) ? best : null
    found.set(letters, answer)
    return answer
  }
}
