import type { Hung, Wall } from './wall.ts'

/** A string from one tile to another, as an SVG path, and the knot where it comes in. */
export interface Strung {
  readonly id: string
  readonly path: string
  readonly knot: { readonly x: number; readonly y: number }
}

const STUB_PX = 9

/** From the end of one to the beginning of the other: along, over, along; round by a step where the other begins sooner. */
function stringBetween(a: Hung, b: Hung): Strung {
  const id = `${a.id} ${b.id}`
  const knot = { x: b.from, y: b.y }
  if (a.y === b.y && a.to <= b.from) return { id, path: `M${a.to} ${a.y}H${b.from}`, knot }
  const turn = Math.max(a.right, b.from - STUB_PX)
  const path =
    turn <= b.from - STUB_PX
      ? `M${a.right} ${a.y}H${turn}V${b.y}H${b.from}`
      : `M${a.right} ${a.y}h${STUB_PX}V${(a.y + b.y) / 2}H${b.from - STUB_PX}V${b.y}H${b.from}`
  return { id, path, knot }
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
