import type { Minor, TaxRate } from '../record/scalars.ts'
import { minorOf, taxOf } from '../record/tax.ts'

/** A price before tax, its tax, and both together, in minor units. */
export interface Sum {
  readonly net: Minor
  readonly tax: Minor
  readonly gross: Minor
}

interface Priced {
  readonly net: Minor
  readonly taxRate: TaxRate
}

const sumFrom = (net: bigint, tax: bigint): Sum => ({
  net: minorOf(net),
  tax: minorOf(tax),
  gross: minorOf(net + tax),
})

/** Lines added up: tax is rounded on each line, and the rounded taxes are added. @throws {RangeError} */
export function sumOf(lines: readonly Priced[]): Sum {
  let net = 0n
  let tax = 0n
  for (const line of lines) {
    net += BigInt(line.net)
    tax += BigInt(taxOf(line.net, line.taxRate))
  }
  return sumFrom(net, tax)
}

/** Sums of sums, as they are. @throws {RangeError} */
export function addSums(...sums: readonly Sum[]): Sum {
  const total = (pick: (sum: Sum) => Minor) =>
    sums.reduce((running, sum) => running + BigInt(pick(sum)), 0n)
  return sumFrom(
    total((sum) => sum.net),
    total((sum) => sum.tax),
  )
}
