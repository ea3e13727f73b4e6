import * as z from 'zod/mini'
import { BRAKE_WARNING, brakeCylinder, brakeEngineer, unsignedChange } from './brake-hydraulics.ts'
import { defineSum, figure, result } from './sum.ts'

/** What another master cylinder does to pressure and travel. */
export const masterChange = defineSum({
  name: 'master-change',
  title: 'Another master cylinder',
  group: 'running gear',
  formula: 'pressure × (old ÷ new)²; pedal travel × (old ÷ new)²',
  source: 'Pascal’s law; textbook.',
  tolerance: '0.001',
  hazards: ['brakes'],
  input: z.strictObject({
    before: brakeCylinder('Master before'),
    now: brakeCylinder('Master now'),
    engineer: brakeEngineer,
  }),
  reckon({ before, now, engineer }) {
    const unsigned = before === now ? null : unsignedChange(engineer)
    if (unsigned !== null) return unsigned
    const ratio = (before / now) ** 2
    return result(
      [
        figure('pressure', 'Pressure, times', ratio, '×', 3),
        figure('travel', 'Pedal travel, times', ratio, '×', 3),
      ],
      {
        working: [
          `(${before} ÷ ${now})² = ${ratio.toFixed(4)}`,
          ...(engineer === undefined ? [] : [`Change signed for by ${engineer}.`]),
        ],
        warnings: [
          BRAKE_WARNING,
          ...(ratio > 1
            ? ['More pressure for the same foot, and so much more travel of the pedal.']
            : []),
        ],
      },
    )
  },
})
