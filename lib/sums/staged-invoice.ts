import * as z from 'zod/mini'
import { divideHalfAway, minorOf, taxOf } from '../record/tax.ts'
import { measure } from './fields.ts'
import {
  hundredths,
  isFault,
  moneyField,
  pennies,
  pounds,
  TAX_SOURCE,
  taxField,
  taxWithin,
} from './pennies.ts'
import { ask, defineSum, figure, refuse, result } from './sum.ts'

/** A staged invoice with retention and a deposit already paid. */
export const stagedInvoice = defineSum({
  name: 'staged-invoice',
  title: 'Staged invoice, deposit and retention',
  group: 'money and hours',
  formula:
    'retained = net × retention; now = net − retained − deposit net; tax on now; retention and its tax later',
  source: TAX_SOURCE,
  tolerance: 'To the penny',
  hazards: [],
  input: z.strictObject({
    net: moneyField('Net of this stage', { least: 0 }),
    retention: measure('Retention', '%', { least: 0, greatest: 100 }),
    rate: taxField,
    deposit: moneyField('Deposit paid, with tax', {
      least: 0,
      help: 'Its tax fell due when it came in; 0 where there is none.',
    }),
  }),
  reckon({ net, retention, rate: percent, deposit }) {
    const whole = pennies('net', 'Net of this stage', net)
    if (isFault(whole)) return refuse(whole)
    const paid = pennies('deposit', 'Deposit paid, with tax', deposit)
    if (isFault(paid)) return refuse(paid)
    const rate = hundredths('rate', 'Tax', percent)
    if (isFault(rate)) return refuse(rate)
    const keeps = hundredths('retention', 'Retention', retention)
    if (isFault(keeps)) return refuse(keeps)
    const kept = minorOf(divideHalfAway(BigInt(whole) * BigInt(keeps), 10_000n))
    const paidTax = taxWithin(paid, rate)
    const paidNet = paid - paidTax
    const now = minorOf(BigInt(whole - kept - paidNet))
    if (now < 0) {
      const most = whole - kept + taxOf(minorOf(BigInt(whole - kept)), rate)
      return refuse(
        ask(
          'deposit',
          'Deposit paid: more than this stage comes to. Is the rest to be set against a later one?',
          [{ words: `Yes, ${pounds(most).toFixed(2)} here`, set: { deposit: pounds(most) } }],
        ),
      )
    }
    const tax = taxOf(now, rate)
    return result(
      [
        figure('to pay', 'To pay', pounds(now + tax)),
        figure('now', 'Net now', pounds(now)),
        figure('tax', 'Tax', pounds(tax)),
        figure('retained', 'Held back', pounds(kept)),
        figure('later tax', 'Tax on what is held back, later', pounds(taxOf(kept, rate))),
      ],
      {
        working: [
          `${pounds(whole).toFixed(2)} − ${pounds(kept).toFixed(2)} held back − ${pounds(paidNet).toFixed(2)} deposit = ${pounds(now).toFixed(2)}`,
          `Deposit ${pounds(paid).toFixed(2)} is ${pounds(paidNet).toFixed(2)} and ${pounds(paidTax).toFixed(2)} tax, taxed when it came in.`,
        ],
      },
    )
  },
})
