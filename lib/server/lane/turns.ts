/** Runs work when it is its turn: first come, first served. */
export type Turns = <T>(work: () => Promise<T>) => Promise<T>

/** Turns of which `most` go on at once. */
export function openTurns(most: number): Turns {
  let free = most
  const waiting: (() => void)[] = []
  return async (work) => {
    if (free > 0) free--
    else await new Promise<void>((begin) => waiting.push(begin))
    try {
      return await work()
    } finally {
      const next = waiting.shift()
      if (next === undefined) free++
      else next()
    }
  }
}
