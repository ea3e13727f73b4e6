import * as z from 'zod/mini'
import {
  CABLE_SOURCE,
  cableFields,
  dropOf,
  OHM_PER_KM,
  SECTIONS,
  USUAL_DROPS,
  warmth,
} from './cable.ts'
import { choice, measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

/** Voltage drop along a cable. */
export const cableDrop = defineSum({
  name: 'cable-drop',
  title: 'Voltage drop along a cable',
  group: 'electrics',
  formula: 'drop = I × length × ways × R20 ÷ 1000 × (1 + 0.00393 × (T − 20)), and the earth path’s',
  source: CABLE_SOURCE,
  tolerance: '0.5 %',
  hazards: ['battery'],
  input: z.strictObject({
    ...cableFields,
    section: choice('Section, mm²', SECTIONS, {
      '0.5': '0.5',
      '0.75': '0.75',
      '1': '1',
      '1.5': '1.5',
      '2.5': '2.5',
      '4': '4',
      '6': '6',
      '10': '10',
      '16': '16',
      '25': '25',
      '35': '35',
      '50': '50',
    }),
    system: measure('System', 'V', { least: 6, greatest: 48 }),
    earth: z.optional(
      measure('Earth path, measured', 'V', {
        least: 0,
        greatest: 10,
        help: 'Where it returns through the body.',
      }),
    ),
    limit: z.optional(measure('Drop allowed', 'V', { above: 0, greatest: 10, help: USUAL_DROPS })),
  }),
  reckon({ section, system, earth, limit, ...run }) {
    if (run.ways === 'wire' && earth !== undefined)
      return refuse(
        fault(
          'earth',
          'Earth path: it returns by a wire, whose drop is in the sum already. Leave it empty.',
        ),
      )
    const drop = dropOf(run, section).plus(earth ?? 0)
    const passes = limit !== undefined && drop.lte(limit)
    return result(
      [
        figure('drop', 'Drop', drop.toNumber(), 'V', 3),
        figure('percent', 'Of the system', drop.div(system).times(100).toNumber(), '%'),
      ],
      {
        verdict:
          limit === undefined
            ? null
            : { passes, words: passes ? 'Within what is allowed' : 'More than is allowed' },
        working: [
          `${run.amps} × ${run.length} × ${run.ways === 'body' ? 1 : 2} × ${OHM_PER_KM[section]} ÷ 1000 × ${warmth(run.celsius).toFixed(4)}${earth === undefined ? '' : ` + ${earth}`} = ${drop.toFixed(3)} V`,
        ],
        warnings:
          run.ways === 'body' && earth === undefined
            ? ['Add the drop of the earth path, measured.']
            : [],
      },
    )
  },
})
