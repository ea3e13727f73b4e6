/** A stage's bar as long as its days, in px, with the cure that follows it. */
export interface Bar {
  readonly id: string
  readonly left: number
  readonly right: number
  /** How far its cure goes on behind it; none where it has none. */
  readonly cure: number
  /** Of its number. */
  readonly figures: number
  readonly name: string
}

/**
 * Where a stage's words stand: all in the bar; the number in it or close behind it, and the name on the right, on the left, or,
 * where neither has room, nowhere: then the list and the accessible name say it.
 */
export interface Tile extends Bar {
  readonly row: number
  readonly words: 'inside' | 'right' | 'left' | 'number'
  /** The number stands in the bar; else behind it. */
  readonly holdsNumber: boolean
  /** Width of the name where it stands beside. */
  readonly nameWidth: number
  /** What it covers without its name, and with it: no two tiles of a row share any of that. */
  readonly from: number
  readonly to: number
  readonly nameFrom: number
  readonly nameTo: number
}

/** What a thumb can press. */
const TARGET = 44
/** Between two tiles of a row. */
const GAP = 18
/** Between a bar and its number behind it, and between a tile and its name. */
export const BEHIND = 9
export const BESIDE = 8
/** Rows of a lane that may be opened for the sake of a name; in more of them only bars that would lie on each other. */
const ROWS_FOR_NAMES = 8
/** A name wider than this in two lines is cut off, and whole in the list. */
const WIDEST_NAME = 300
/** Our face at 15 px, its wider letters, per character; the stencil at 20 px per figure. */
const LETTER = 8.4
const FIGURE = 13
const MARK = 18
const PAD = 7

/** Width of a name set in two lines, broken where that makes them shortest. */
export function widthInTwoLines(name: string): number {
  const spaces = [...name.matchAll(/ /g)].map(({ index }) => index)
  const shortest = spaces.reduce(
    (least, at) => Math.min(least, Math.max(at, name.length - at - 1)),
    name.length,
  )
  return Math.min(WIDEST_NAME, Math.ceil(shortest * LETTER))
}

/** Number over mark. */
const numberWidth = (figures: number): number => Math.max(MARK, figures * FIGURE) + 8
/** Number, mark and name in a row. */
const allWidth = ({ figures, name }: Bar): number =>
  PAD + figures * FIGURE + 6 + MARK + 6 + widthInTwoLines(name) + PAD

interface Sized {
  readonly bar: Bar
  readonly inside: boolean
  readonly holdsNumber: boolean
  readonly nameWidth: number
  readonly from: number
  readonly to: number
}

function sized(bar: Bar): Sized {
  const width = bar.right - bar.left
  const number = numberWidth(bar.figures)
  const inside = width >= allWidth(bar)
  const holdsNumber = width >= number
  const needs = bar.right + bar.cure + (holdsNumber ? 0 : BEHIND + number)
  return {
    bar,
    inside,
    holdsNumber,
    nameWidth: widthInTwoLines(bar.name),
    from: bar.left,
    to: Math.max(needs, bar.left + TARGET),
  }
}

const withName = ({ inside, to, nameWidth }: Sized): number =>
  inside ? to : to + BESIDE + nameWidth

/** The bars of a lane in rows, so that nothing lies on anything. Earlier bars have the first choice; the same bars, the same rows. */
export function inRows(bars: readonly Bar[]): readonly Tile[] {
  const rows: Sized[][] = []
  const fits = (row: readonly Sized[], one: Sized, end: (last: Sized) => number): boolean => {
    const last = row.at(-1)
    return last === undefined || end(last) + GAP <= one.from
  }
  const sorted = bars
    .map(sized)
    .toSorted((a, b) => a.from - b.from || a.to - b.to || (a.bar.id < b.bar.id ? -1 : 1))
  for (const one of sorted) {
    const roomy = rows.find((row) => fits(row, one, withName))
    const tight =
      rows.length < ROWS_FOR_NAMES ? undefined : rows.find((row) => fits(row, one, ({ to }) => to))
    const row = roomy ?? tight
    if (row === undefined) rows.push([one])
    else row.push(one)
  }
  return rows.flatMap(named)
}

/** Gives the names of a row their places: inside, else on the right, else on the left, else none. */
function named(row: readonly Sized[], n: number): readonly Tile[] {
  let taken = 0
  return row.map(({ bar, inside, holdsNumber, nameWidth, from, to }, at) => {
    const free = row[at + 1]?.from ?? Number.POSITIVE_INFINITY
    const base = { ...bar, row: n, holdsNumber, nameWidth, from, to }
    const right = to + BESIDE + nameWidth
    const left = from - BESIDE - nameWidth
    const tile: Tile = inside
      ? { ...base, words: 'inside', nameFrom: from, nameTo: to }
      : right + GAP <= free
        ? { ...base, words: 'right', nameFrom: from, nameTo: right }
        : left >= taken
          ? { ...base, words: 'left', nameFrom: left, nameTo: to }
          : { ...base, words: 'number', nameFrom: from, nameTo: to }
    taken = tile.nameTo + GAP
    return tile
  })
}
