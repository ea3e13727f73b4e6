import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import {
  COOLANT_WARNINGS,
  coolantKind,
  GLYCOL_SOURCE,
  glycolTable,
  otherCoolant,
  tooMuchGlycol,
} from './glycol.ts'
import { ask, defineSum, figure, refuse, result } from './sum.ts'

/** Two tables of the same mix differ by up to this at the strong end, in °C. */
const TABLES_DIFFER = 3

/** Freezing point of a mixture. */
export const coolantFreeze = defineSum({
  name: 'coolant-freeze',
  title: 'Freezing point of coolant',
  group: 'engine',
  formula: 'straight between the rows of the table',
  source: GLYCOL_SOURCE,
  tolerance: '3 °C: count on the warmer side.',
  hazards: ['coolant'],
  input: z.strictObject({
    kind: coolantKind,
    percent: measure('Glycol', '%', { least: 0, greatest: 100 }),
    by: z.optional(
      choice('Per cent', ['volume', 'mass'], { volume: 'by volume', mass: 'by mass' }),
    ),
  }),
  reckon({ kind, percent, by }) {
    const other = otherCoolant(kind)
    if (other !== null) return other
    if (by === undefined)
      return refuse(
        ask(
          'by',
          'Per cent: by volume or by mass? A refractometer’s scale must be for this glycol, and says which.',
          [
            { words: 'By volume', set: { by: 'volume' } },
            { words: 'By mass', set: { by: 'mass' } },
          ],
        ),
      )
    const most = tooMuchGlycol('percent', 'Glycol', percent, by)
    if (most !== null) return most
    const freezes = glycolTable(percent, by, 'freezes')
    return result(
      [
        figure('freezes', 'Begins to freeze at', freezes, '°C', 1),
        figure(
          'count on',
          'Count on no colder than',
          Math.min(0, Math.ceil(freezes + TABLES_DIFFER)),
          '°C',
          0,
        ),
      ],
      {
        working: [
          `${percent} % by ${by} lies between two rows of the table: ${freezes.toFixed(2)} °C`,
        ],
        warnings: COOLANT_WARNINGS,
      },
    )
  },
})
