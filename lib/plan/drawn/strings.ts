import { type Hung, TILE_PX, type Wall } from './wall.ts'

/** A string from one tile to another, as an SVG path, and the knot where it comes in. */
export interface Strung {
  readonly id: string
  readonly path: string
  readonly knot: { readonly x: number; readonly y: number }
}

/** How far before the beginning of a card its string turns to it: there the knot hangs. */
const STUB_PX = 16

/**
 * From one card to the beginning of another: out of its end where there is room between them, else down or up from under it, and
 * along into the other.
 */
function stringBetween(a: Hung, b: Hung): Strung {
  const id = `${a.id} ${b.id}`
  const knot = { x: b.from, y: b.y }
  if (a.y === b.y) return { id, path: `M${a.right} ${a.y}H${b.from}`, knot }
  const turn = b.from - STUB_PX
  if (turn >= a.right) return { id, path: `M${a.right} ${a.y}H${turn}V${b.y}H${b.from}`, knot }
  const x = Math.max(a.left + 2, turn)
  const edge = a.y + (b.y > a.y ? TILE_PX / 2 : -TILE_PX / 2)
  return { id, path: `M${x} ${edge}V${b.y}H${b.from}`, knot }
}

/** The critical run as far as it is drawn: each tile strung to the next. */
export function runStrings(wall: Wall, run: readonly string[]): readonly Strung[] {
  return run.flatMap((id, n) => {
    const one = wall.tiles.get(run[n - 1] ?? '')
    const next = wall.tiles.get(id)
    return one === undefined || next === undefined ? [] : [stringBetween(one, next)]
  })
}

/** The strings of one stage: to all it waits for, and to all that waits for it. */
export function stringsOf(
  wall: Wall,
  stage: string,
  links: readonly { readonly from: string; readonly to: string }[],
): readonly Strung[] {
  return links.flatMap(({ from, to }) => {
    if (from !== stage && to !== stage) return []
    const one = wall.tiles.get(from)
    const next = wall.tiles.get(to)
    return one === undefined || next === undefined ? [] : [stringBetween(one, next)]
  })
}
