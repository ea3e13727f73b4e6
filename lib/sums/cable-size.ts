import * as z from 'zod/mini'
import { CABLE_SOURCE, cableFields, dropOf, SECTIONS, USUAL_DROPS } from './cable.ts'
import { measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

/** The smallest section within a drop; its current rating is the cable's own sheet's. */
export const cableSize = defineSum({
  name: 'cable-size',
  title: 'Cable section for a drop',
  group: 'electrics',
  formula:
    'smallest section whose drop is within the limit, and whose own rating carries the current',
  source: CABLE_SOURCE,
  tolerance: '0.5 %',
  hazards: ['battery'],
  input: z.strictObject({
    ...cableFields,
    limit: measure('Drop allowed', 'V', { above: 0, greatest: 10, help: USUAL_DROPS }),
    rating: z.optional(
      measure('Rating of that section', 'A', {
        above: 0,
        greatest: 1000,
        help: 'Once the section is found: from the cable’s own sheet, at this temperature.',
      }),
    ),
  }),
  reckon({ limit, rating, ...run }) {
    const section = SECTIONS.find((one) => dropOf(run, one).lte(limit))
    if (section === undefined)
      return refuse(
        fault(
          'limit',
          'Drop allowed: not even 50 mm² keeps within it. Shorten the run or use two cables.',
        ),
      )
    const drop = dropOf(run, section)
    return result(
      [
        figure('section', 'Section', section, 'mm²'),
        figure('drop', 'Its drop', drop.toNumber(), 'V', 3),
      ],
      {
        verdict:
          rating === undefined
            ? null
            : rating >= run.amps
              ? { passes: true, words: 'Its rating carries the current' }
              : {
                  passes: false,
                  words: 'Its rating is under the current: take the next that carries it',
                },
        working: [`${section} mm² loses ${drop.toFixed(3)} V, ${limit} V are allowed.`],
        warnings: [
          ...(rating === undefined
            ? ['Its current rating, from the cable’s own sheet, must be enough too.']
            : []),
          ...(run.ways === 'body' ? ['The earth path loses some too: measure it.'] : []),
        ],
      },
    )
  },
})
