import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'
import { convert } from './units.ts'

/** Rate at the wheel. */
export const wheelRate = defineSum({
  name: 'wheel-rate',
  title: 'Spring rate at the wheel',
  group: 'running gear',
  formula: 'k × (motion ratio)²',
  source: 'Lever arithmetic.',
  tolerance: '0.5 %',
  hazards: ['springs'],
  input: z.strictObject({
    rate: measure('Rate of the spring', 'N/mm', { above: 0, greatest: 1000 }),
    motion: measure('Motion ratio', '', {
      above: 0,
      greatest: 2,
      help: 'How far the spring moves for 1 at the wheel.',
    }),
  }),
  reckon({ rate, motion }) {
    const wheel = rate * motion ** 2
    return result(
      [
        figure('wheel', 'At the wheel', wheel, 'N/mm'),
        figure('lbf/in', 'At the wheel', convert(wheel, 'N/mm', 'lbf/in'), 'lbf/in', 1),
      ],
      { working: [`${rate} × ${motion}² = ${wheel.toFixed(3)} N/mm`] },
    )
  },
})
