import * as z from 'zod/mini'
import { Minor, TaxRate } from '../record/scalars.ts'
import { divideHalfAway, minorOf, taxOf } from '../record/tax.ts'
import { Decimal } from './decimal.ts'
import { measure, measures } from './fields.ts'
import { ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

const SOURCE =
  'HMRC VAT Notice 700, 17.5, as summarised in HMRC manual VATREC12010 (read); deposits VATTOS5105 and retention VATTOS5170 (read). Other countries differ: the method is a setting, and this is no tax advice.'
const money = (label: string, least?: number) =>
  measure(label, '', { greatest: 1_000_000_000, ...(least === undefined ? {} : { least }) })
const rate = measure('Tax', '%', { least: 0, greatest: 100 })

/** Whole pennies of an amount; a fault where it has more than two decimals. */
function pennies(field: string, label: string, amount: number, faults: Fault[]): Minor {
  const exact = new Decimal(amount).times(100)
  if (!exact.round(0).eq(exact))
    faults.push(
      fault(
        field,
        `${label}: ${amount} has more than two decimals. Round it as it is agreed, or give quantity and price.`,
      ),
    )
  return minorOf(BigInt(exact.round(0).toFixed(0)))
}
const hundredths = (percent: number): TaxRate => TaxRate.parse(Math.round(percent * 100))
const pounds = (minor: number): number => new Decimal(minor).div(100).toNumber()
const total = (values: readonly number[]): Minor => Minor.parse(values.reduce((a, b) => a + b, 0))

/** Tax by line and by invoice, side by side. */
export const taxLines = defineSum({
  name: 'tax-lines',
  title: 'Tax on lines, by line and by invoice',
  group: 'money and hours',
  formula: 'by line: tax each, round, add; by invoice: add, tax once, round; half away from zero',
  source: SOURCE,
  tolerance: 'To the penny',
  hazards: [],
  input: z.strictObject({
    lines: measures('Net lines', '', { greatest: 1_000_000_000, help: 'A credit is minus.' }),
    rate,
  }),
  reckon({ lines, rate: percent }) {
    const faults: Fault[] = []
    const nets = lines.map((line, i) =>
      pennies(`lines.${i}`, `Net lines, figure ${i + 1}`, line, faults),
    )
    if (faults.length > 0) return refuse(...faults)
    const of = hundredths(percent)
    const net = total(nets)
    const byLine = total(nets.map((one) => taxOf(one, of)))
    const byInvoice = taxOf(net, of)
    return result(
      [
        figure('net', 'Net', pounds(net)),
        figure('tax by line', 'Tax, by line', pounds(byLine)),
        figure('gross by line', 'With tax, by line', pounds(net + byLine)),
        figure('tax by invoice', 'Tax, by invoice', pounds(byInvoice)),
        figure('gross by invoice', 'With tax, by invoice', pounds(net + byInvoice)),
        figure('difference', 'Difference', pounds(byLine - byInvoice)),
      ],
      {
        warnings: [
          'One method a shop and a series, printed on the invoice; a credit takes the method and rate of what it reverses.',
        ],
      },
    )
  },
})

/** Tax out of a sum that includes it. */
export const taxInclusive = defineSum({
  name: 'tax-inclusive',
  title: 'Tax within a sum',
  group: 'money and hours',
  formula: 'tax = gross × r ÷ (100 + r), rounded; net = gross − tax',
  source: SOURCE,
  tolerance: 'To the penny',
  hazards: [],
  input: z.strictObject({ gross: money('Sum with tax'), rate }),
  reckon({ gross, rate: percent }) {
    const faults: Fault[] = []
    const whole = pennies('gross', 'Sum with tax', gross, faults)
    if (faults.length > 0) return refuse(...faults)
    const of = BigInt(hundredths(percent))
    const tax = minorOf(divideHalfAway(BigInt(whole) * of, 10_000n + of))
    return result([figure('tax', 'Tax', pounds(tax)), figure('net', 'Net', pounds(whole - tax))])
  },
})

/** A sum split by weights, to the penny: largest remainder, ties to the earlier. */
export const splitSum = defineSum({
  name: 'split-sum',
  title: 'A sum split over stages',
  group: 'money and hours',
  formula:
    'whole pennies by weight; what is left goes to the largest remainders, ties to the earlier',
  source: 'Largest-remainder method; common practice.',
  tolerance: 'To the penny: the parts add up to the whole.',
  hazards: [],
  input: z.strictObject({
    total: money('Sum'),
    weights: measures('Weights', '', { least: 0, greatest: 1_000_000 }),
  }),
  reckon({ total: sum, weights }) {
    const faults: Fault[] = []
    const whole = pennies('total', 'Sum', sum, faults)
    const all = weights.reduce((a, b) => a.plus(b), new Decimal(0))
    if (all.eq(0)) faults.push(fault('weights', 'Weights: all of them are nothing.'))
    if (faults.length > 0) return refuse(...faults)
    const sign = whole < 0 ? -1 : 1
    const exact = weights.map((weight) => new Decimal(Math.abs(whole)).times(weight).div(all))
    const floors = exact.map((part) => Number(part.round(0, 0).toFixed(0)))
    const left = Math.abs(whole) - floors.reduce((a, b) => a + b, 0)
    const first = exact
      .map((part, i) => ({ i, rest: part.minus(floors[i] ?? 0) }))
      .toSorted((a, b) => b.rest.cmp(a.rest) || a.i - b.i)
      .slice(0, left)
      .map(({ i }) => i)
    return result(
      floors.map((part, i) =>
        figure(
          `part ${i + 1}`,
          `Part ${i + 1}`,
          pounds(sign * (part + (first.includes(i) ? 1 : 0))),
        ),
      ),
    )
  },
})

/** A staged invoice with retention and a deposit already paid. */
export const stagedInvoice = defineSum({
  name: 'staged-invoice',
  title: 'Staged invoice, deposit and retention',
  group: 'money and hours',
  formula:
    'retained = net × retention; now = net − retained − deposit net; tax on now; retention and its tax later',
  source: SOURCE,
  tolerance: 'To the penny',
  hazards: [],
  input: z.strictObject({
    net: money('Net of this stage', 0),
    retention: measure('Retention', '%', { least: 0, greatest: 100 }),
    rate,
    deposit: money('Deposit paid, with tax', 0),
  }),
  reckon({ net, retention, rate: percent, deposit }) {
    const faults: Fault[] = []
    const whole = pennies('net', 'Net of this stage', net, faults)
    const paid = pennies('deposit', 'Deposit paid, with tax', deposit, faults)
    if (faults.length > 0) return refuse(...faults)
    const of = hundredths(percent)
    const paidTax = minorOf(divideHalfAway(BigInt(paid) * BigInt(of), 10_000n + BigInt(of)))
    const kept = minorOf(
      divideHalfAway(BigInt(whole) * BigInt(Math.round(retention * 100)), 10_000n),
    )
    const now = Minor.parse(whole - kept - (paid - paidTax))
    if (now < 0)
      return refuse(
        ask(
          'deposit',
          'Deposit paid: more than this stage comes to. Is the rest to be set against a later one?',
        ),
      )
    const tax = taxOf(now, of)
    return result([
      figure('retained', 'Held back', pounds(kept)),
      figure('now', 'Net now', pounds(now)),
      figure('tax', 'Tax', pounds(tax)),
      figure('to pay', 'To pay', pounds(now + tax)),
      figure('later tax', 'Tax on what is held back, later', pounds(taxOf(kept, of))),
    ])
  },
})
