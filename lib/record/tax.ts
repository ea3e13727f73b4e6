import { Minor, type TaxRate } from './scalars.ts'

const abs = (value: bigint): bigint => (value < 0n ? -value : value)

/** The quotient to the nearest whole; an exact half goes away from zero, so a credit undoes its charge to the penny. */
export function divideHalfAway(dividend: bigint, divisor: bigint): bigint {
  const whole = (2n * abs(dividend) + abs(divisor)) / (2n * abs(divisor))
  return dividend < 0n === divisor < 0n ? whole : -whole
}

/**
 * A sum of minor units from exact arithmetic. @throws {RangeError} beyond what a whole number holds exactly
 * (±9,007,199,254,740,991), rather than be a little wrong.
 */
export function minorOf(value: bigint): Minor {
  const parsed = Minor.safeParse(Number(value))
  if (!parsed.success) throw new RangeError(`${value} minor units are too many to add up exactly.`)
  return parsed.data
}

/** Tax on the net price of one line, in minor units: half up, away from zero. Rates are in hundredths of a per cent. */
export const taxOf = (net: Minor, rate: TaxRate): Minor =>
  minorOf(divideHalfAway(BigInt(net) * BigInt(rate), 10_000n))
