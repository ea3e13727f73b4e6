import { Big as makeBig } from 'big.js'

/** Decimal numbers of our own settings: thirty places in a division, halves away from zero. */
export const Decimal = makeBig()
Decimal.DP = 30
Decimal.RM = 1
/** A decimal number. */
export type Decimal = InstanceType<typeof Decimal>

/** A figure to so many places, halves away from zero: `2.675` to 2 is `2.68`, as it is written and not as it is stored. */
export const toPlaces = (value: number, places: number): string =>
  new Decimal(value).toFixed(places)

/** The sum of figures as they are written: 0.1 and 0.2 are 0.3. */
export const sumOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum.plus(value), new Decimal(0)).toNumber()
