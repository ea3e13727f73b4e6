import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { measures } from './fields.ts'
import { isFault, moneyField, pennies, pounds } from './pennies.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

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
    total: moneyField('Sum'),
    weights: measures('Weights', '', { least: 0, greatest: 1_000_000 }),
  }),
  reckon({ total, weights }) {
    const whole = pennies('total', 'Sum', total)
    if (isFault(whole)) return refuse(whole)
    const all = weights.reduce((sum, weight) => sum.plus(weight), new Decimal(0))
    if (all.eq(0)) return refuse(fault('weights', 'Weights: all of them are nothing.'))
    const size = Math.abs(whole)
    const exact = weights.map((weight) => new Decimal(size).times(weight).div(all))
    const floors = exact.map((part) => part.round(0, 0).toNumber())
    const left = size - floors.reduce((sum, part) => sum + part, 0)
    const rounded = new Set(
      exact
        .map((part, i) => ({ i, rest: part.minus(floors[i] ?? 0) }))
        .toSorted((a, b) => b.rest.cmp(a.rest) || a.i - b.i)
        .slice(0, left)
        .map(({ i }) => i),
    )
    const parts = floors.map((part, i) => Math.sign(whole) * (part + (rounded.has(i) ? 1 : 0)))
    return result(
      parts.map((part, i) => figure(`part ${i + 1}`, `Part ${i + 1}`, pounds(part))),
      {
        working: [
          `${parts.map((part) => pounds(part).toFixed(2)).join(' + ')} = ${pounds(whole).toFixed(2)}`,
        ],
      },
    )
  },
})
