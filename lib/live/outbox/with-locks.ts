/** Runs `work` while no other tab, and not the service worker either, holds one of those lanes. */
export type WithLocks = <T>(lanes: readonly string[], work: () => Promise<T>) => Promise<T>

const nameOf = (lane: string): string => `fettleyard lane ${lane}`

/** Always in the same order, so that two who want the same lanes never wait for each other. */
const inOrder = (lanes: readonly string[]): readonly string[] => [...new Set(lanes)].sort()

/** By the browser's own locks, which a page that ends gives back by itself. */
export const webLocks =
  (locks: LockManager): WithLocks =>
  (lanes, work) =>
    inOrder(lanes).reduceRight<() => ReturnType<typeof work>>(
      (inner, lane) => async () => await locks.request(nameOf(lane), inner),
      work,
    )()

/** One after another in this tab alone, where the browser has no locks: the server's keys still make each count once. */
export function ownLocks(): WithLocks {
  const last = new Map<string, Promise<unknown>>()
  return (lanes, work) => {
    const before = inOrder(lanes).map((lane) => last.get(lane))
    const run = Promise.allSettled(before).then(work)
    for (const lane of lanes) last.set(lane, run)
    return run
  }
}
