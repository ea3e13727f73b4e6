import * as z from 'zod/mini'
import { Decimal, sumOf } from './decimal.ts'
import { choice, measure, measures, words } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'

const GAP_LIMITS = { least: -5, greatest: 25 }

/** Panel gap at numbered points. Decided in decimals: 4.5 + 0.5 is 5.0. */
export const panelGap = defineSum({
  name: 'panel-gap',
  title: 'Panel gap',
  group: 'panels',
  formula:
    'every point within agreed ± tolerance; greatest − least within the taper; left against right of the same point within its own',
  source:
    'Common practice, no source; ISO 1101 and ISO 8015 name the idea of tolerance (from memory).',
  tolerance: 'Limits are inclusive; nothing is rounded before it is compared.',
  hazards: [],
  input: z.strictObject({
    agreed: measure('Agreed gap', 'mm', GAP_LIMITS),
    by: choice('Agreed on', ['gap sheet', 'build order'], {
      'gap sheet': 'the signed gap sheet',
      'build order': 'the build order',
    }),
    tolerance: measure('Tolerance, ±', 'mm', { least: 0, greatest: 5 }),
    taper: measure('Taper along the gap, at most', 'mm', { least: 0, greatest: 10 }),
    points: measure('Points on the sheet', '', { least: 1, greatest: 50 }),
    gauge: words('Gauge', 'Feeler or taper gauge.'),
    readings: measures('Readings', 'mm', GAP_LIMITS),
    otherSide: z.optional(measures('The other side, same points', 'mm', GAP_LIMITS)),
    sides: z.optional(measure('Left against right, at most', 'mm', { least: 0, greatest: 10 })),
  }),
  reckon({ agreed, by, tolerance, taper, points, gauge, readings, otherSide, sides }) {
    if (readings.length < points)
      return refuse(
        fault(
          'readings',
          `Readings: ${readings.length} of ${points} points, so not complete. Read the others too.`,
        ),
      )
    if (otherSide !== undefined && otherSide.length !== readings.length)
      return refuse(fault('otherSide', 'The other side: as many points as this side.'))
    if (otherSide !== undefined && sides === undefined)
      return refuse(fault('sides', 'Left against right: missing. A blank is not zero.'))
    const [low, high] = [new Decimal(agreed).minus(tolerance), new Decimal(agreed).plus(tolerance)]
    const spread = new Decimal(Math.max(...readings)).minus(Math.min(...readings))
    const wrong = [
      ...pointsWhere(readings, (value) => low.gt(value) || high.lt(value)),
      ...(spread.gt(taper) ? ['taper'] : []),
      ...pointsWhere(otherSide ?? [], (value, i) =>
        new Decimal(value)
          .minus(readings[i] ?? value)
          .abs()
          .gt(sides ?? 0),
      ).map((point) => `${point} against the other side`),
    ]
    const mean = new Decimal(sumOf(readings)).div(readings.length)
    return result(
      [
        figure('mean', 'Mean', mean.toNumber(), 'mm'),
        figure('taper', 'Taper', spread.toNumber(), 'mm', 1),
      ],
      {
        verdict: {
          passes: wrong.length === 0,
          words: wrong.length === 0 ? 'As agreed' : `Out: ${wrong.join('; ')}`,
        },
        working: [
          `Each point ${low.toFixed(1)} to ${high.toFixed(1)} mm, agreed on the ${by}.`,
          `Read by ${gauge}.`,
        ],
      },
    )
  },
})

/** Points, by their numbers, for which that is so. */
export const pointsWhere = (
  readings: readonly number[],
  isSo: (value: number, index: number) => boolean,
): readonly string[] =>
  readings.flatMap((value, index) => (isSo(value, index) ? [`point ${index + 1}`] : []))
