import * as z from 'zod/mini'
import { Decimal, sumOf } from './decimal.ts'
import { choice, measure, measures } from './fields.ts'
import { ask, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

const MOST_PSI = 400
/** No unit reads higher: 400 psi in kPa. */
const MOST = 2758
/** A wet reading this many times the dry one points at rings; common practice, 10 to 15 %. */
const WET_RISE = '1.1'

/** Compression test: lowest over highest. Common practice, no source; the limit is agreed in the build order. */
export const compressionSpread = defineSum({
  name: 'compression-spread',
  title: 'Compression test, spread',
  group: 'engine',
  formula: 'lowest ÷ highest ≥ the limit agreed',
  source: 'Common practice, no source.',
  tolerance: 'Decided on full precision.',
  hazards: ['rotating parts', 'fuel', 'battery'],
  input: z.strictObject({
    unit: choice('In', ['psi', 'bar', 'kPa'], { psi: 'psi', bar: 'bar', kPa: 'kPa' }),
    readings: measures('Cylinders, in order', '', {
      least: 0,
      greatest: MOST,
      count: 2,
      help: 'A dead cylinder is 0.',
    }),
    limit: choice(
      'Limit agreed',
      ['0.90', '0.85', '0.75'],
      {
        '0.90': '0.90, the 10 % rule',
        '0.85': '0.85, the 15 % rule',
        '0.75': '0.75, of some old books',
      },
      'From the build order.',
    ),
    wet: z.optional(
      measures('Wet, with a spoon of oil', '', {
        least: 0,
        greatest: MOST,
        count: 2,
        help: 'The same cylinders in the same order.',
      }),
    ),
    own: z.optional(
      measure('The engine’s own figure', '', {
        above: 0,
        greatest: MOST,
        help: 'The mean is set beside it.',
      }),
    ),
  }),
  reckon({ unit, readings, limit, wet, own }) {
    const most = convert(MOST_PSI, 'psi', unit)
    const high = readings.findIndex((value) => value >= most)
    if (high !== -1)
      return refuse(
        ask(
          `readings.${high}`,
          `Cylinder ${high + 1}: ${readings[high]} ${unit} is not under ${MOST_PSI} psi. Is the unit right?`,
        ),
      )
    if (wet !== undefined && wet.length !== readings.length)
      return refuse(fault('wet', 'Wet: as many cylinders as dry, in the same order.'))
    const [lowest, highest] = [Math.min(...readings), Math.max(...readings)]
    const at = readings.indexOf(lowest) + 1
    const ratio = highest === 0 ? 0 : lowest / highest
    const passes = lowest > 0 && new Decimal(lowest).gte(new Decimal(highest).times(limit))
    const mean = sumOf(readings) / readings.length
    return result(
      [
        figure('ratio', 'Lowest to highest', ratio, '', 3),
        figure('under', 'Lowest under the highest by', (1 - ratio) * 100, '%', 1),
        figure('lowest', 'Lowest cylinder', at, '', 0),
        figure('mean', 'Mean', mean, unit, unit === 'bar' ? 2 : 0),
        ...(own === undefined
          ? []
          : [figure('of own', 'Mean, of the engine’s own', (mean / own) * 100, '%', 1)]),
      ],
      {
        verdict: {
          passes,
          words: passes
            ? 'Even enough'
            : lowest === 0
              ? `Cylinder ${at} is dead`
              : `Cylinder ${at} is too low`,
        },
        working: [`${lowest} ÷ ${highest} = ${ratio.toFixed(3)}, limit ${limit}`],
        warnings: wet === undefined ? [] : [raisedByOil(readings, wet)],
      },
    )
  },
})

function raisedByOil(dry: readonly number[], wet: readonly number[]): string {
  const raised = dry.flatMap((value, i) =>
    new Decimal(wet[i] ?? 0).gt(new Decimal(value).times(WET_RISE)) ? [i + 1] : [],
  )
  return raised.length === 0
    ? 'Oil raised no cylinder by more than 10 %: a low one is then its valves or gasket rather than its rings (common practice).'
    : `Oil raised cylinder ${raised.join(', ')} by more than 10 %: rings rather than valves (common practice).`
}
