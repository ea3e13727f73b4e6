import * as z from 'zod/mini'
import type { Minor, TaxRate } from '../record/scalars.ts'
import { taxOf } from '../record/tax.ts'
import { choice, measure, rows, words } from './fields.ts'
import {
  addUp,
  hundredths,
  isFault,
  moneyField,
  pennies,
  pounds,
  priced,
  TAX_SOURCE,
} from './pennies.ts'
import { defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

const Line = z.strictObject({
  net: z.optional(moneyField('Net', { help: 'Or quantity and price. A credit is minus.' })),
  quantity: z.optional(measure('Quantity', '', { above: 0, greatest: 1_000_000 })),
  price: z.optional(moneyField('Price of one')),
  rate: measure('Tax', '%', { least: 0, greatest: 100 }),
})
type Line = z.infer<typeof Line>

interface Priced {
  readonly net: Minor
  readonly rate: TaxRate
}

/** Tax on the lines of an invoice or credit note, by line and by invoice. */
export const taxLines = defineSum({
  name: 'tax-lines',
  title: 'Tax on lines',
  group: 'money and hours',
  formula:
    'by line: tax each, round, add; by invoice: add what has the same rate, tax once, round; half away from zero',
  source: TAX_SOURCE,
  tolerance: 'To the penny',
  hazards: [],
  input: z.strictObject({
    lines: rows('Lines', Line),
    method: choice(
      'Method',
      ['line', 'invoice'],
      { line: 'by line', invoice: 'by invoice' },
      'One for a shop and a series, printed on the invoice; a credit takes that of what it reverses.',
    ),
    reverses: z.optional(words('Reverses invoice', 'Of a credit note: the number of its invoice.')),
    untaxed: z.optional(words('Why untaxed', 'Of a line at 0 %: reverse charge, out of scope.')),
  }),
  reckon({ lines, method, reverses, untaxed }) {
    const read = lines.map((line, i) => pricedLine(line, i))
    const faults = read.flatMap((line) => ('net' in line ? [] : [line]))
    if (faults.length > 0) return refuse(...faults)
    const all = read.flatMap((line) => ('net' in line ? [line] : []))
    const net = addUp(all.map((line) => line.net))
    if (net < 0 && reverses === undefined)
      return refuse(
        fault(
          'reverses',
          'Reverses invoice: missing. Less than nothing is a credit note, which names the invoice it reverses.',
        ),
      )
    if (all.some(({ rate }) => rate === 0) && untaxed === undefined)
      return refuse(
        fault('untaxed', 'Why untaxed: missing. A rate of 0 % has its reason on the invoice.'),
      )
    const byLine = addUp(all.map((line) => taxOf(line.net, line.rate)))
    const byInvoice = addUp(
      [...Map.groupBy(all, ({ rate }) => rate)].map(([rate, same]) =>
        taxOf(addUp(same.map((line) => line.net)), rate),
      ),
    )
    const tax = method === 'line' ? byLine : byInvoice
    return result(
      [
        figure('gross', net < 0 ? 'Credit note' : 'Invoice', pounds(addUp([net, tax]))),
        figure('net', 'Net', pounds(net)),
        figure('tax', `Tax, by ${method}`, pounds(tax)),
        figure(
          'other tax',
          `Tax, by ${method === 'line' ? 'invoice' : 'line'}`,
          pounds(method === 'line' ? byInvoice : byLine),
        ),
        figure('difference', 'By line less by invoice', pounds(byLine - byInvoice)),
      ],
      {
        working: [
          ...all.map(
            (line) =>
              `${pounds(line.net).toFixed(2)} at ${line.rate / 100} %: ${pounds(taxOf(line.net, line.rate)).toFixed(2)}`,
          ),
          ...(net < 0 ? [`Credit note, reverses invoice ${reverses}.`] : []),
          ...(untaxed === undefined ? [] : [`Untaxed: ${untaxed}.`]),
        ],
      },
    )
  },
})

function pricedLine(line: Line, index: number): Priced | Fault {
  const at = (field: string) => `lines.${index}.${field}`
  const label = (of: string) => `Lines, row ${index + 1}, ${of}`
  const rate = hundredths(at('rate'), label('Tax'), line.rate)
  if (isFault(rate)) return rate
  if (line.net !== undefined && (line.quantity !== undefined || line.price !== undefined))
    return fault(
      at('net'),
      `${label('Net')}: beside quantity and price it is given twice. Leave one empty.`,
    )
  if (line.net !== undefined) {
    const net = pennies(at('net'), label('Net'), line.net)
    return isFault(net) ? net : { net, rate }
  }
  if (line.quantity === undefined || line.price === undefined)
    return fault(at('net'), `${label('Net')}: missing. Give it, or quantity and price.`)
  const price = pennies(at('price'), label('Price of one'), line.price)
  return isFault(price) ? price : { net: priced(line.quantity, price), rate }
}
