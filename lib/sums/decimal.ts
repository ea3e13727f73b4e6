import Big from 'big.js'

/** Decimal arithmetic for sums: forty places where a division doesn't end, half away from zero where it is rounded. */
export const Decimal = Big()
Decimal.DP = 40
Decimal.RM = Big.roundHalfUp

/** A decimal number of any length. */
export type Decimal = Big

/** The written figure at so many places, half away from zero; never `-0.0`. For showing: nothing is decided on it. */
export function rounded(value: Big.BigSource, places: number): string {
  const text = new Decimal(value).toFixed(places)
  return /^-0(\.0*)?$/.test(text) ? text.slice(1) : text
}

/** The sum of decimal numbers; nought of none. */
export const total = (values: readonly Big.BigSource[]): Decimal =>
  values.reduce<Decimal>((sum, value) => sum.plus(value), new Decimal(0))
