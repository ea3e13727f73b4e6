import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'
import { convert } from './units.ts'

/** Rate of a coil spring: G·d⁴ ÷ (8·Dm³·n), as in EN 13906-1 (from memory). */
export const coilSpring = defineSum({
  name: 'coil-spring',
  title: 'Rate of a coil spring',
  group: 'running gear',
  formula: 'k = G × d⁴ ÷ (8 × Dm³ × n)',
  source: 'EN 13906-1 (from memory).',
  tolerance: '0.5 %',
  hazards: ['springs'],
  input: z.strictObject({
    wire: measure('Wire', 'mm', { above: 0, greatest: 40 }),
    coil: measure('Mean diameter of the coil', 'mm', { above: 0, greatest: 400 }),
    turns: measure('Working coils', '', { above: 0, greatest: 40 }),
    shear: choice('Shear modulus, N/mm²', ['79300', '81500'], {
      '79300': '79,300, spring wire',
      '81500': '81,500, as EN 13906-1 has it for some wires',
    }),
  }),
  reckon({ wire, coil, turns, shear }) {
    const rate = (Number(shear) * wire ** 4) / (8 * coil ** 3 * turns)
    const index = coil / wire
    return result(
      [
        figure('N/mm', 'Rate', rate, 'N/mm'),
        figure('lbf/in', 'Rate', convert(rate, 'N/mm', 'lbf/in'), 'lbf/in', 1),
      ],
      {
        working: [`${shear} × ${wire}⁴ ÷ (8 × ${coil}³ × ${turns}) = ${rate.toFixed(3)} N/mm`],
        warnings:
          index < 4 || index > 16
            ? [`Coil to wire is ${index.toFixed(1)}: outside 4 to 16 the formula is poor.`]
            : [],
      },
    )
  },
})
