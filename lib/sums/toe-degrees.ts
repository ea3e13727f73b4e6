import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'
import { TOE_SOURCE, toeFields } from './toe-fields.ts'

/** Toe in degrees of what was measured in millimetres. */
export const toeDegrees = defineSum({
  name: 'toe-degrees',
  title: 'Toe, millimetres to degrees',
  group: 'running gear',
  formula: 'each wheel = asin(total mm ÷ 2D); total is twice that',
  source: TOE_SOURCE,
  tolerance: '0.001°',
  hazards: ['crushing'],
  input: z.strictObject({
    mm: measure('Toe', 'mm', {
      least: -30,
      greatest: 30,
      help: 'Rear gap less front gap: in is plus, out is minus.',
    }),
    ...toeFields,
  }),
  reckon({ mm, given, at, diameter }) {
    const total = given === 'total' ? mm : 2 * mm
    const each = (Math.asin(total / (2 * diameter)) * 180) / Math.PI
    return result(
      [
        figure('each', 'Each wheel', each, '°', 3),
        figure('total', 'Total', each * 2, '°', 3),
        figure('minutes', 'Total', each * 120, '′', 1),
      ],
      { working: [`asin(${total} ÷ (2 × ${diameter})) = ${each.toFixed(4)}°, at the ${at}`] },
    )
  },
})
