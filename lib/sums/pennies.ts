import { type Minor, TaxRate } from '../record/scalars.ts'
import { divideHalfAway, minorOf } from '../record/tax.ts'
import { Decimal } from './decimal.ts'
import { measure } from './fields.ts'
import { type Fault, fault } from './sum.ts'

/** Greatest amount of money that is typed: so many lines still add up exactly. */
const MOST = 1_000_000_000

/** Where the sums of tax are from. */
export const TAX_SOURCE =
  'HMRC VAT Notice 700, 17.5, as summarised in HMRC manual VATREC12010 (read); deposits VATTOS5105 and retention VATTOS5170 (read). Other countries differ: the method is a setting, and this is no tax advice.'

/** An amount of money; a credit is minus where `least` isn't given. */
export const moneyField = (
  label: string,
  more: { readonly least?: number; readonly help?: string } = {},
) => measure(label, '', { least: -MOST, greatest: MOST, ...more })

/** A rate of tax. */
export const taxField = measure('Tax', '%', { least: 0, greatest: 100 })

/** Whole pennies of an amount, or what is wrong with it. */
export function pennies(field: string, label: string, amount: number): Minor | Fault {
  const exact = new Decimal(amount).times(100)
  return exact.round(0).eq(exact)
    ? minorOf(BigInt(exact.toFixed(0)))
    : fault(
        field,
        `${label}: ${amount} has more than two decimals. Round it as it is agreed, or give quantity and price.`,
      )
}

/** A rate in hundredths of a per cent, or what is wrong with it. */
export function hundredths(field: string, label: string, percent: number): TaxRate | Fault {
  const exact = new Decimal(percent).times(100)
  return exact.round(0).eq(exact)
    ? TaxRate.parse(exact.toNumber())
    : fault(field, `${label}: ${percent} % has more than two decimals.`)
}

/** A price times a quantity in whole pennies, half away from zero. */
export const priced = (quantity: number, price: Minor): Minor =>
  minorOf(BigInt(new Decimal(quantity).times(price).round(0, 1).toFixed(0)))

/** The tax within an amount that includes it: net is the rest, so that both always add up to it. */
export const taxWithin = (gross: Minor, rate: TaxRate): Minor =>
  minorOf(divideHalfAway(BigInt(gross) * BigInt(rate), 10_000n + BigInt(rate)))

/** Pennies added up. */
export const addUp = (amounts: readonly Minor[]): Minor =>
  minorOf(amounts.reduce((sum, amount) => sum + BigInt(amount), 0n))

/** Pounds as they are shown. */
export const pounds = (minor: number): number => new Decimal(minor).div(100).toNumber()

/** Tells a fault from a figure. */
export const isFault = (value: number | Fault): value is Fault => typeof value !== 'number'
