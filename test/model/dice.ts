/** Draws that follow from one number, so that a run can be played again. */
export interface Dice {
  /** A whole number from 0 up to, and without, `n`. */
  readonly below: (n: number) => number
  readonly chance: (percent: number) => boolean
  /** One of them; undefined where there is none. */
  readonly of: <T>(items: readonly T[]) => T | undefined
  /** Some of them, at most so many, each once. */
  readonly some: <T>(items: readonly T[], most: number) => T[]
  readonly shuffled: <T>(items: readonly T[]) => T[]
}

export function diceOf(seed: number): Dice {
  let state = (seed ^ 0x5bd1e995) >>> 0
  const below = (n: number): number => {
    // A linear congruential step; its low bits are poor, so the high ones are used.
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0
    return Math.floor(((state >>> 8) / 0x1000000) * n)
  }
  const shuffled = <T>(items: readonly T[]): T[] =>
    items
      .map((item) => ({ item, rank: below(1_000_000) }))
      .sort((a, b) => a.rank - b.rank)
      .map(({ item }) => item)
  // Seeds that are neighbours begin alike.
  for (let i = 0; i < 4; i++) below(2)
  return {
    below,
    chance: (percent) => below(100) < percent,
    of: (items) => items[below(items.length)],
    some: (items, most) => shuffled(items).slice(0, below(most + 1)),
    shuffled,
  }
}
