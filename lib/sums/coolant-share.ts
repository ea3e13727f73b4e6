import * as z from 'zod/mini'
import { measure } from './fields.ts'
import {
  COLDEST,
  COOLANT_WARNINGS,
  coolantKind,
  GLYCOL_SOURCE,
  glycolTable,
  otherCoolant,
} from './glycol.ts'
import { defineSum, figure, result } from './sum.ts'

/** The mixture for a freezing point. */
export const coolantShare = defineSum({
  name: 'coolant-share',
  title: 'Coolant for the cold',
  group: 'engine',
  formula: 'the table of freezing points, read backwards',
  source: GLYCOL_SOURCE,
  tolerance: '3 °C: reckon with some degrees colder than it gets.',
  hazards: ['coolant'],
  input: z.strictObject({
    kind: coolantKind,
    celsius: measure('Must stand', '°C', {
      least: COLDEST,
      greatest: 0,
      help: 'Colder than −48.3 no glycol and water stands.',
    }),
  }),
  reckon({ kind, celsius }) {
    const volume = glycolTable(celsius, 'freezes', 'volume')
    return (
      otherCoolant(kind) ??
      result(
        [
          figure('volume', 'Glycol by volume, at least', volume, '%', 1),
          figure(
            'mass',
            'Glycol by mass, at least',
            glycolTable(celsius, 'freezes', 'mass'),
            '%',
            1,
          ),
        ],
        {
          working: [
            `${celsius} °C lies between two rows of the table: ${volume.toFixed(2)} % by volume`,
          ],
          warnings: COOLANT_WARNINGS,
        },
      )
    )
  },
})
