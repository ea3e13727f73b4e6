import type { StageId } from '../record/ids.ts'

/** The two ends of a link: `to` waits for `from`. */
export interface LinkEnds {
  readonly from: StageId
  readonly to: StageId
}

/**
 * The circle that a link `from` → `to` would close with those links: `[from, to, …]`, each waiting for the one before it
 * and the first for the last. Null where it would close none. The shortest circle is named, so that a person can read it.
 */
export function circleThrough(
  links: readonly LinkEnds[],
  from: StageId,
  to: StageId,
): StageId[] | null {
  if (from === to) return [from]
  const after = new Map<StageId, StageId[]>()
  for (const link of links) {
    const known = after.get(link.from)
    if (known === undefined) after.set(link.from, [link.to])
    else known.push(link.to)
  }
  const cameFrom = new Map<StageId, StageId>()
  const queue = [to]
  const seen = new Set(queue)
  for (const stage of queue) {
    for (const next of after.get(stage) ?? []) {
      if (seen.has(next)) continue
      seen.add(next)
      cameFrom.set(next, stage)
      if (next === from) return [from, ...wayBack(cameFrom, to, from)]
      queue.push(next)
    }
  }
  return null
}

/** The stages from `to` up to the one before `end`. */
function wayBack(cameFrom: ReadonlyMap<StageId, StageId>, to: StageId, end: StageId): StageId[] {
  const way: StageId[] = []
  let stage = cameFrom.get(end)
  while (stage !== undefined) {
    way.push(stage)
    stage = stage === to ? undefined : cameFrom.get(stage)
  }
  return way.reverse()
}
