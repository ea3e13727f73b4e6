import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { measure } from './fields.ts'
import { ask, asTyped, defineSum, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

/** Whole sheets of hide: pattern ÷ (1 − waste), not × (1 + waste). */
export const hides = defineSum({
  name: 'hides',
  title: 'Hides for a trim set',
  group: 'trim',
  formula: 'hide area = pattern ÷ (1 − waste); hides rounded up',
  source: 'Common practice, no source; 1 sq ft = 0.09290304 m² exactly.',
  tolerance: '0.1 sq ft; counts exact',
  hazards: ['cutting'],
  input: z.strictObject({
    pattern: measure('Pattern area', 'sq ft', { above: 0, greatest: 2000 }),
    waste: measure('Waste', '%', {
      least: 0,
      greatest: 89.999,
      help: '25 to 40 on hides with marks and curves.',
    }),
    hide: measure('A hide, about', 'sq ft', { above: 0, greatest: 100 }),
  }),
  reckon({ pattern, waste, hide }, meant) {
    if (waste > 0 && waste < 1 && !meant('waste')) {
      const share = new Decimal(waste).times(100).toNumber()
      return refuse(
        ask('waste', `Waste ${waste}: is ${waste} % meant, or ${share} %?`, [
          { words: `${share} %`, set: { waste: share } },
          asTyped('waste', `${waste} %`),
        ]),
      )
    }
    const kept = new Decimal(100).minus(waste).div(100)
    const area = new Decimal(pattern).div(kept)
    const count = new Decimal(pattern).div(kept.times(hide)).round(0, 3)
    return result(
      [
        figure('hides', 'Hides', count.toNumber(), '', 0),
        figure('sq ft', 'Hide area', area.toNumber(), 'sq ft', 1),
        figure('m²', 'Hide area', convert(area.toNumber(), 'sq ft', 'm²'), 'm²'),
      ],
      {
        working: [`${pattern} ÷ (1 − ${waste} %) = ${area.toFixed(2)} sq ft`],
        warnings: ['All from one dye lot, and one spare if the budget allows (common practice).'],
      },
    )
  },
})
