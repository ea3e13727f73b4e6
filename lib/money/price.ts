import * as z from 'zod/mini'
import { Line, type Minor, TaxRate } from '../record/scalars.ts'
import { divideHalfAway, minorOf } from '../record/tax.ts'

/** Most that one line may come to, in minor units: so many lines still add up exactly. */
const MOST = 100_000_000_000

/** A price that is typed: whole minor units, minus for what falls away. */
export const Price = z
  .int('whole minor units')
  .check(
    z.minimum(-MOST, 'not below −1,000,000,000.00'),
    z.maximum(MOST, 'not above 1,000,000,000.00'),
  )
  .brand<'Minor'>()

const QUANTITY_PLACES = 4
const SCALE = 10 ** QUANTITY_PLACES

/** Hours, pieces, litres: more than nothing, with four decimals at most, so that price times quantity is exact. */
const Quantity = z.number().check(
  z.minimum(1 / SCALE, 'more than nothing'),
  z.maximum(1_000_000, 'at most 1,000,000'),
  z.refine((value) => /^\d+(\.\d{1,4})?$/.test(String(value)), 'at most four decimals'),
)

/** Quantity times unit price in minor units, half up, away from zero. `quantity` has four decimals at most. */
export function quantityTimes(quantity: number, unitPrice: Minor): Minor {
  // A decimal fraction times ten thousand is off by a hair in floating point; rounding makes it the whole it stands for.
  const scaled = BigInt(Math.round(quantity * SCALE))
  return minorOf(divideHalfAway(scaled * BigInt(unitPrice), BigInt(SCALE)))
}

/** A line of a change order as it is typed. Quantity and unit price explain the net price, so they must come to it. */
export const ChangeLineInput = z
  .strictObject({
    text: Line,
    quantity: z.optional(Quantity),
    unit: z.optional(Line),
    unitPrice: z.optional(Price),
    net: Price,
    taxRate: TaxRate,
  })
  .check(
    z.refine(({ quantity, unitPrice }) => unitPrice === undefined || quantity !== undefined, {
      path: ['quantity'],
      error: 'how many, where there is a price for one',
    }),
    z.refine(
      ({ quantity, unitPrice, net }) =>
        quantity === undefined ||
        unitPrice === undefined ||
        quantityTimes(quantity, unitPrice) === net,
      { path: ['net'], error: 'quantity times unit price' },
    ),
  )
export type ChangeLineInput = z.infer<typeof ChangeLineInput>
