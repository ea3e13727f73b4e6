import type { StartCondition } from '../record/condition.ts'
import type { CoatKind, Ground } from '../record/entities/coating.ts'

/**
 * What keeps one product off another. *Not over it*: only both makers' sheets could say otherwise. *Isolator first*, *primer first*: bare metal has its
 * own primer. *Window or keyed*: inside the window of what lies there, or over a keyed surface. *Window or a fresh coat*: past it keyed, and a fresh coat of
 * the same first.
 */
export type OverWhy = Extract<StartCondition, { readonly rule: 'coat-over' }>['why']

/** One row: `lay` over `over`. Hours are typical and fall to the sheet's, which stand on the link; `fact` is a row of the trade's facts. */
export interface OverRule {
  readonly fact: string
  readonly lay: readonly CoatKind[]
  readonly over: readonly Ground[]
  readonly why: OverWhy
  readonly leastHours?: number
  readonly greatestHours?: number
}

const fillers: readonly CoatKind[] = ['filler', 'sprayed polyester']
const acids: readonly CoatKind[] = ['etch primer', 'rust converter']
const build: readonly CoatKind[] = [...acids, 'epoxy', ...fillers, 'high build', 'seam sealer']

/** What may go over what; what has no row may. A maker's data sheet outranks each of them. */
export const overWhat: readonly OverRule[] = [
  { fact: 'B3', lay: fillers, over: ['etch primer'], why: 'not over it' },
  { fact: 'B4', lay: ['epoxy'], over: acids, why: 'not over it' },
  { fact: 'B5', lay: fillers, over: ['epoxy'], why: 'window or keyed' },
  { fact: 'B6', lay: ['high build', 'isolator'], over: ['epoxy'], why: 'window or keyed' },
  {
    fact: 'B7',
    lay: ['lacquer'],
    over: ['colour'],
    why: 'window or a fresh coat',
    leastHours: 0.5,
    greatestHours: 24,
  },
  { fact: 'B8', lay: ['colour'], over: build, why: 'isolator first' },
  {
    fact: 'B8',
    lay: ['colour', 'lacquer', 'isolator', 'high build'],
    over: ['bare metal'],
    why: 'primer first',
  },
]

/** The rules for laying a product on that ground. */
export const rulesOver = (lay: CoatKind, over: Ground): readonly OverRule[] =>
  overWhat.filter((rule) => rule.lay.includes(lay) && rule.over.includes(over))

/** Bare blasted steel is coated in the same shift: hours from when it is bare. */
export const BARE_STEEL_HOURS = 8
/** Lacquer cures this long before it is flatted wet or polished, in hours at 20 °C. */
export const LACQUER_CURE_HOURS = 48
/** The least lacquer that flatting leaves, in µm. */
export const LACQUER_LEAST_MICRONS = 40
