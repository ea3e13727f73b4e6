import type { Link, Stage } from '../../record/entities/work.ts'
import type { Instant } from '../../record/scalars.ts'
import type { LaidOut, LaidStage } from '../laid-out.ts'
import { type Days, daysBetween } from './days.ts'
import { type Bar, inRows, type Tile } from './in-rows.ts'

/** How much of the wall a day takes, in px. */
export const DAY_PX = { day: 72, week: 24, month: 7 } as const
export type Zoom = keyof typeof DAY_PX

/** From the top of one row of tiles to the next, and what a lane keeps free above and below them. */
export const ROW_PX = 58
export const TILE_PX = 44
const LANE_PX = 10
/** Behind the last of it, so that the end isn't at the edge. */
const AFTER_PX = 24
/** A cure shorter than this can't be seen. */
const LEAST_CURE_PX = 6
const HOUR_DAYS = 1 / 24

/** A tile where it hangs: `y` is the middle of it. */
export interface Hung extends Tile {
  readonly stage: Stage
  readonly laid: LaidStage
  readonly y: number
}
export interface WallLane {
  readonly party: string
  readonly top: number
  readonly height: number
  readonly tiles: readonly Hung[]
}
/** The build order along the days as it is drawn: everything in px. */
export interface Wall {
  readonly zoom: Zoom
  readonly days: Days
  readonly width: number
  readonly height: number
  readonly today: number
  readonly lanes: readonly WallLane[]
  readonly tiles: ReadonlyMap<string, Hung>
}

/**
 * Draws those stages, a lane a party in the order given. `links` say which cures are drawn.
 */
export function wallOf(
  stages: readonly Stage[],
  links: readonly Link[],
  laidOut: LaidOut,
  lanes: readonly string[],
  { zoom, now, zone }: { readonly zoom: Zoom; readonly now: Instant; readonly zone: string },
): Wall {
  const px = DAY_PX[zoom]
  const shown = stages.flatMap((stage) => {
    const laid = laidOut.stages.get(stage.id)
    return laid === undefined ? [] : [{ stage, laid }]
  })
  const froms = shown.map(({ laid }) => laid.from)
  const tos = shown.map(({ laid }) => laid.to)
  const days = daysBetween(
    [now, ...froms].toSorted()[0] ?? now,
    [now, ...tos].toSorted().at(-1) ?? now,
    zone,
  )
  const cures = longestLags(links)
  const byId = new Map<string, (typeof shown)[number]>(shown.map((one) => [one.stage.id, one]))
  const barOf = ({ stage, laid }: (typeof shown)[number]): Bar => {
    const left = days.along(laid.from) * px
    const right = Math.max(left + 3, days.along(laid.to) * px)
    const cure = (cures.get(stage.id) ?? 0) * HOUR_DAYS * px
    return {
      id: stage.id,
      left,
      right,
      cure: cure < LEAST_CURE_PX ? 0 : cure,
      figures: Math.max(2, String(stage.number).length),
      name: stage.name,
    }
  }
  const tiles = new Map<string, Hung>()
  const hung: WallLane[] = []
  let top = 0
  for (const party of lanes) {
    const own = shown.filter(({ stage }) => stage.party === party)
    if (own.length === 0) continue
    const placed = inRows(own.map(barOf)).flatMap((tile): Hung[] => {
      const one = byId.get(tile.id)
      const y = top + LANE_PX + tile.row * ROW_PX + TILE_PX / 2
      return one === undefined ? [] : [{ ...tile, ...one, y }]
    })
    const rows = placed.reduce((most, { row }) => Math.max(most, row + 1), 0)
    const height = LANE_PX * 2 + rows * ROW_PX - (ROW_PX - TILE_PX)
    const inTime = placed.toSorted((a, b) => a.from - b.from || a.row - b.row)
    for (const tile of inTime) tiles.set(tile.id, tile)
    hung.push({ party, top, height, tiles: inTime })
    top += height
  }
  const right = [...tiles.values()].reduce((most, { nameTo }) => Math.max(most, nameTo), 0)
  return {
    zoom,
    days,
    width: Math.ceil(Math.max(days.dates.length * px, right + AFTER_PX)),
    height: top,
    today: days.along(now) * px,
    lanes: hung,
    tiles,
  }
}

/** The longest cure behind each stage, in hours. */
function longestLags(links: readonly Link[]): ReadonlyMap<string, number> {
  const longest = new Map<string, number>()
  for (const { from, leastLagHours } of links)
    longest.set(from, Math.max(longest.get(from) ?? 0, leastLagHours))
  return longest
}
