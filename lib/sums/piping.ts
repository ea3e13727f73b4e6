import * as z from 'zod/mini'
import { Decimal, sumOf } from './decimal.ts'
import { measures } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'

/** What is lost at ends and corners; common practice. */
const OVER = '1.1'

/** Piping for the seams. */
export const piping = defineSum({
  name: 'piping',
  title: 'Piping for seams',
  group: 'trim',
  formula: 'sum of the seams × 1.1',
  source: 'Common practice, no source.',
  tolerance: '0.1 m',
  hazards: [],
  input: z.strictObject({
    seams: measures('Seams', 'mm', { above: 0, greatest: 20_000 }),
  }),
  reckon({ seams }) {
    const metres = new Decimal(sumOf(seams)).times(OVER).div(1000)
    return result([figure('length', 'Piping', metres.toNumber(), 'm')], {
      working: [`${seams.join(' + ')} mm, × ${OVER} = ${metres.toFixed(3)} m`],
    })
  },
})
