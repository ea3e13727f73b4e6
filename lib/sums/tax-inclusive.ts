import * as z from 'zod/mini'
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
import { defineSum, figure, refuse, result } from './sum.ts'

/** Tax out of a sum that includes it. */
export const taxInclusive = defineSum({
  name: 'tax-inclusive',
  title: 'Tax within a sum',
  group: 'money and hours',
  formula: 'tax = gross × r ÷ (100 + r), rounded; net = gross − tax',
  source: TAX_SOURCE,
  tolerance: 'To the penny: net and tax add up to the sum.',
  hazards: [],
  input: z.strictObject({ gross: moneyField('Sum with tax'), rate: taxField }),
  reckon({ gross, rate: percent }) {
    const whole = pennies('gross', 'Sum with tax', gross)
    if (isFault(whole)) return refuse(whole)
    const rate = hundredths('rate', 'Tax', percent)
    if (isFault(rate)) return refuse(rate)
    const tax = taxWithin(whole, rate)
    return result([figure('tax', 'Tax', pounds(tax)), figure('net', 'Net', pounds(whole - tax))], {
      working: [`${gross} × ${percent} ÷ (100 + ${percent}) = ${pounds(tax).toFixed(2)}`],
    })
  },
})
