/** `to` waits for `from`. */
export interface Ends<T> {
  readonly from: T
  readonly to: T
}

/**
 * Circles among links, each as the list of what waits for the one before it, the first for the last. None shares a stage
 * with another; every circle there is meets one of them. Time goes by the number of links, so a whole file can be checked at once.
 */
export function circlesAmong<T>(links: readonly Ends<T>[]): T[][] {
  const after = new Map<T, T[]>()
  for (const { from, to } of links) {
    const known = after.get(from)
    if (known === undefined) after.set(from, [to])
    else known.push(to)
  }
  const circles: T[][] = []
  const done = new Set<T>()
  for (const start of after.keys()) {
    if (done.has(start)) continue
    // The way from `start` to where we stand, with what is still to be followed from each. A loop, as a file may be one
    // chain of five thousand and a call for each would overflow the stack.
    const way = [{ at: start, next: 0 }]
    const onWay = new Map([[start, 0]])
    for (let here = way.at(-1); here !== undefined; here = way.at(-1)) {
      const follower = after.get(here.at)?.[here.next]
      here.next++
      if (follower === undefined) {
        done.add(here.at)
        onWay.delete(here.at)
        way.pop()
        continue
      }
      if (done.has(follower)) continue
      const closes = onWay.get(follower)
      if (closes === undefined) {
        onWay.set(follower, way.length)
        way.push({ at: follower, next: 0 })
        continue
      }
      const circle = way.splice(closes).map((step) => step.at)
      for (const stage of circle) {
        done.add(stage)
        onWay.delete(stage)
      }
      circles.push(circle)
    }
  }
  return circles
}
