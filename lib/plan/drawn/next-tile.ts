import type { Hung, Wall } from './wall.ts'

/**
 * Where a key leads from a tile: left to what it waits for last, right to what waits for it first, up and down to the nearest tile
 * of the next row or lane, Home and End to the first and the last on the wall. Null where there is nothing.
 */
export function nextTile(
  wall: Wall,
  links: readonly { readonly from: string; readonly to: string }[],
  at: string,
  key: string,
): Hung | null {
  const tile = wall.tiles.get(at)
  const all = [...wall.tiles.values()]
  if (key === 'Home') return best(all, ({ from }) => from)
  if (key === 'End') return best(all, ({ right }) => -right)
  if (tile === undefined) return null
  const tied = (from: 'from' | 'to', to: 'from' | 'to') =>
    links.flatMap((link) => (link[from] === at ? (wall.tiles.get(link[to]) ?? []) : []))
  // Along the critical run where it has a choice.
  const offRun = ({ laid }: Hung) => (laid.onRun && tile.laid.onRun ? 0 : FAR)
  if (key === 'ArrowLeft') return best(tied('to', 'from'), (one) => offRun(one) - one.right)
  if (key === 'ArrowRight') return best(tied('from', 'to'), (one) => offRun(one) + one.from)
  const away = (one: Hung) => Math.abs(one.from - tile.from)
  if (key === 'ArrowUp') {
    const above = all.filter(({ y }) => y < tile.y)
    return best(inRow(above, Math.max(...above.map(({ y }) => y))), away)
  }
  if (key === 'ArrowDown') {
    const below = all.filter(({ y }) => y > tile.y)
    return best(inRow(below, Math.min(...below.map(({ y }) => y))), away)
  }
  return null
}

/** Further than any wall is wide. */
const FAR = 1e7

const inRow = (tiles: readonly Hung[], y: number): readonly Hung[] =>
  tiles.filter((one) => one.y === y)

function best(tiles: readonly Hung[], cost: (tile: Hung) => number): Hung | null {
  return tiles.reduce<Hung | null>(
    (found, one) => (found === null || cost(one) < cost(found) ? one : found),
    null,
  )
}
