import type Big from 'big.js'
import { Decimal, rounded } from './decimal.ts'
import type { Quantity } from './limits.ts'
import type { Figure, SumAsk, SumRefused, SumResult } from './sum.ts'
import { converted, type Unit } from './units.ts'

/** One figure of a result, written at `places`; decimal or binary, it keeps all of its own precision in `value`. */
export const figure = (
  key: string,
  label: string,
  value: Big.BigSource,
  unit: Unit,
  places: number,
  row?: string,
): Figure => ({
  key,
  label,
  value: Number(value),
  unit,
  places,
  shown: rounded(value, places),
  ...(row === undefined ? {} : { row }),
})

/** An answer in words: `P800`. */
export const inWords = (key: string, label: string, shown: string, row?: string): Figure => ({
  key,
  label,
  value: null,
  unit: '',
  places: 0,
  shown,
  ...(row === undefined ? {} : { row }),
})

/** The answer of a sum; what it has none of may be left out. */
export const result = (
  parts: Pick<SumResult, 'figures' | 'working'> & Partial<Omit<SumResult, 'outcome'>>,
): SumResult => ({ verdict: null, warnings: [], ...parts, outcome: 'result' })

/** No answer, for one reason: the field's path, and the sentence that names it and the way out. */
export const refused = (field: string, says: string): SumRefused => refusedAll([[field, says]])

/** No answer, for several reasons. */
export const refusedAll = (reasons: readonly (readonly [string, string])[]): SumRefused => ({
  outcome: 'refused',
  refusals: reasons.map(([field, says]) => ({ field, says })),
})

/** A question that only the person can answer. An answer without `set` says that the field is meant as typed. */
export const ask = (
  field: string,
  question: string,
  answers: readonly { readonly says: string; readonly set?: SumAsk['answers'][number]['set'] }[],
): SumAsk => ({
  outcome: 'ask',
  field,
  question,
  answers: answers.map(({ says, set }) => ({ says, set: set ?? { meant: [field] } })),
})

/** A quantity in the unit that a formula wants, to forty places. */
export const inUnit = ({ value, unit }: Quantity, wanted: Unit): Decimal =>
  converted(value, unit, wanted)

/** The same as a plain number, for formulas with logarithms and angles. */
export const numberIn = (given: Quantity, wanted: Unit): number => inUnit(given, wanted).toNumber()

/** A decimal number written at full length, for the working. */
export const plain = (value: Big.BigSource): string => new Decimal(value).toFixed()
