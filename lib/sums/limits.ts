import { converted, type Unit, unitShown } from './units.ts'

/** A number with the unit it was entered in; converted once, where it is reckoned with. */
export interface Quantity {
  readonly value: number
  readonly unit: Unit
}

/** Where a quantity may lie, in the field's first unit: `least` and `greatest` still may, `above` and `below` not quite. */
export interface Limits {
  readonly least?: number
  readonly greatest?: number
  readonly above?: number
  readonly below?: number
  /** The way out, said after the refusal. */
  readonly else?: string
}

/** As one says it, the unit of a bare number left out: `3.27 in`. */
export const said = ({ value, unit }: Quantity): string => `${value} ${unitShown(unit)}`.trim()

/** Why a quantity is refused, and the way out; null where it lies within. Decided at full precision. */
export function outOf(given: Quantity, unit: Unit, limits: Limits): string | null {
  const { least, greatest, above, below } = limits
  const here = converted(given.value, given.unit, unit)
  const within =
    (least === undefined || here.gte(least)) &&
    (greatest === undefined || here.lte(greatest)) &&
    (above === undefined || here.gt(above)) &&
    (below === undefined || here.lt(below))
  return within
    ? null
    : `${said(given)} is out of its limits: ${limitsSaid(limits, unit)}.${limits.else === undefined ? '' : ` ${limits.else}`}`
}

/** The limits in words: `from 20 to 250 mm`, `above 0 g`; empty where there are none. */
export function limitsSaid({ least, greatest, above, below }: Limits, unit: Unit): string {
  const lower = least !== undefined ? `from ${least}` : above !== undefined ? `above ${above}` : ''
  const upper =
    greatest !== undefined
      ? `${lower.startsWith('from') ? 'to' : 'at most'} ${greatest}`
      : below !== undefined
        ? `below ${below}`
        : ''
  const both = [lower, upper].filter((part) => part !== '')
  const joined = both.join(upper.startsWith('to') ? ' ' : ' and ')
  return joined === '' ? '' : `${joined} ${unitShown(unit)}`.trim()
}
