import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'
import { convert } from './units.ts'

/** The unit of a torque, chosen. */
export const torqueUnit = (label: string) =>
  choice(label, ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m'], {
    N·m: 'N·m',
    lbf·ft: 'lbf·ft',
    lbf·in: 'lbf·in',
    kgf·m: 'kgf·m',
  })

/** A torque in another unit, by exact products. */
export const torqueUnits = defineSum({
  name: 'torque-units',
  title: 'Torque in another unit',
  group: 'bolts',
  formula:
    '1 lbf·ft = 0.3048 × 0.45359237 × 9.80665 N·m; 1 lbf·in a twelfth of it; 1 kgf·m = 9.80665 N·m',
  source: 'NIST SP 811 appendix B (from memory); factors exact.',
  tolerance: '1e-9 of the figure',
  hazards: [],
  input: z.strictObject({
    torque: measure('Torque', '', { above: 0, greatest: 100_000 }),
    from: torqueUnit('In'),
    to: torqueUnit('Wanted in'),
  }),
  reckon({ torque, from, to }) {
    const value = convert(torque, from, to)
    return result([figure('torque', 'Torque', value, to, 2)], {
      working: [`${torque} ${from} = ${value.toFixed(4)} ${to}`],
      warnings: ['A dry figure is not valid oiled: write down how the thread was.'],
    })
  },
})
