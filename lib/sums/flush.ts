import * as z from 'zod/mini'
import { choice, measure, measures, words } from './fields.ts'
import { pointsWhere } from './panel-gap.ts'
import { ask, defineSum, fault, figure, refuse, result } from './sum.ts'

const FLUSH_LIMITS = { least: -5, greatest: 25 }

/** Flush of a panel against its neighbour. */
export const flush = defineSum({
  name: 'flush',
  title: 'Flush of panels',
  group: 'panels',
  formula: 'every point within the limits; plus is proud',
  source: 'Common practice, no source.',
  tolerance: 'Limits are inclusive; nothing is rounded before it is compared.',
  hazards: [],
  input: z.strictObject({
    panel: words('Panel that is named', 'Plus where it stands proud of its neighbour.'),
    lies: choice('It lies', ['forward', 'rearward', 'beside'], {
      forward: 'forward of its neighbour',
      rearward: 'behind its neighbour',
      beside: 'beside or above it',
    }),
    least: measure('From', 'mm', FLUSH_LIMITS),
    greatest: measure('to', 'mm', FLUSH_LIMITS),
    points: measure('Points on the sheet', '', { least: 1, greatest: 50 }),
    readings: measures('Readings', 'mm', FLUSH_LIMITS),
  }),
  reckon({ panel, lies, least, greatest, points, readings }) {
    if (least > greatest)
      return refuse(
        ask('greatest', 'to: less than where it begins. Are they the wrong way round?', [
          { words: `Yes, ${greatest} to ${least}`, set: { least: greatest, greatest: least } },
        ]),
      )
    if (readings.length < points)
      return refuse(
        fault(
          'readings',
          `Readings: ${readings.length} of ${points} points, so not complete. Read the others too.`,
        ),
      )
    const out = pointsWhere(readings, (value) => value < least || value > greatest)
    const intoWind = pointsWhere(
      readings,
      (value) => (lies === 'rearward' && value > 0) || (lies === 'forward' && value < 0),
    )
    return result(
      [
        figure('most', 'Most proud', Math.max(...readings), 'mm', 1),
        figure('least', 'Most sunk', Math.min(...readings), 'mm', 1),
      ],
      {
        verdict: {
          passes: out.length === 0,
          words: out.length === 0 ? `${panel}: as agreed` : `Out: ${out.join(', ')}`,
        },
        working: [`Each point ${least} to ${greatest} mm.`],
        warnings:
          intoWind.length === 0
            ? []
            : [
                `The rearward panel stands proud into the wind at ${intoWind.join(', ')} (common practice: it should not).`,
              ],
      },
    )
  },
})
