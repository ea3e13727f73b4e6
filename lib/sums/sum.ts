import type { Hazard } from '../record/entities/work.ts'
import type { FieldInfo } from './fields.ts'
import type { Unit } from './units.ts'

/** Where on the car a sum belongs; the list of sums goes by it. */
export const SUM_GROUPS = [
  'paint',
  'engine',
  'electrics',
  'chassis',
  'trim',
  'office',
  'units',
] as const
export type SumGroup = (typeof SUM_GROUPS)[number]

/**
 * What a formula or a table rests on. `published`: read in the text that `says` names; `from memory`: recalled, not
 * read; `common practice`: a habit of the trade without a source; `arithmetic`: nothing but reckoning.
 */
export interface SumSource {
  readonly basis: 'published' | 'from memory' | 'common practice' | 'arithmetic'
  readonly says: string
}

/**
 * One figure of a result, at full precision, and how it is written: at `places`, half away from zero, with a decimal
 * point and without its unit. `value` is null where the answer is words (`P800`). Figures with one `row` stand in one
 * line of a table, their labels being its columns.
 */
export interface Figure {
  readonly key: string
  readonly label: string
  readonly value: number | null
  readonly unit: Unit
  readonly places: number
  readonly shown: string
  readonly row?: string
}

/** What a sum says of the work: `pass` is null where it can't be judged yet. Decided on full precision. */
export interface SumVerdict {
  readonly pass: boolean | null
  readonly says: string
  /** So near the limit that two good formulas, or the gauge, could disagree. */
  readonly onTheLine?: boolean
}

/** The answer, with the working line by line as one would write it on the card. */
export interface SumResult {
  readonly outcome: 'result'
  readonly figures: readonly Figure[]
  readonly verdict: SumVerdict | null
  readonly working: readonly string[]
  readonly warnings: readonly string[]
}

/** Why no answer: `field` is a path such as `recipe.0.grams`, `''` for all of it; `says` names it and the way out. */
export interface SumRefused {
  readonly outcome: 'refused'
  readonly refusals: readonly { readonly field: string; readonly says: string }[]
}

/** A question that only the person can answer; an answer lays `set` over the input and the sum is worked again. */
export interface SumAsk {
  readonly outcome: 'ask'
  readonly field: string
  readonly question: string
  readonly answers: readonly {
    readonly says: string
    readonly set: Readonly<Record<string, unknown>>
  }[]
}

export type SumOutcome = SumResult | SumRefused | SumAsk

/** A sum of the bench, ready for screen and script. It never signs anything off. */
export interface Sum {
  /** In kebab-case, its address on screen and its name for scripts: `mix-correction`. */
  readonly name: string
  readonly title: string
  /** What it is for, in one sentence. */
  readonly purpose: string
  readonly group: SumGroup
  readonly fields: readonly FieldInfo[]
  readonly formula: string
  readonly sources: readonly SumSource[]
  /** How near the truth the answer is. */
  readonly tolerance: string
  /** The hazards of the work that it is reckoned for: their cautions stand beside it. */
  readonly hazards: readonly Hazard[]
  /** Pure: the same input has the same outcome. Throws at no input. */
  readonly work: (raw: unknown) => SumOutcome
}
