import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { choice, measure, measures, rows } from './fields.ts'
import { defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

const metal = choice('Metal', ['steel', 'aluminium'], { steel: 'Steel', aluminium: 'Aluminium' })
const gauge = choice(
  'Gauge',
  ['magnetic', 'eddy current', 'both'],
  { magnetic: 'Magnetic', 'eddy current': 'Eddy current', both: 'Does both' },
  'Set to zero that day on the same metal.',
)
/** A film over this, in µm, has filler in it. */
const FILLER = 1500

function wrongGauge(on: string, by: string): Fault[] {
  if (on === 'aluminium' && by === 'magnetic')
    return [
      fault('gauge', 'A magnetic gauge does not read on aluminium: take an eddy-current one.'),
    ]
  if (on === 'steel' && by === 'eddy current')
    return [
      fault('gauge', 'An eddy-current gauge does not read a film over steel: take a magnetic one.'),
    ]
  return []
}

const mean = (values: readonly number[]): Decimal =>
  values.reduce((sum, value) => sum.plus(value), new Decimal(0)).div(values.length)

const thick = (greatest: number): string[] =>
  greatest > FILLER ? [`Over ${FILLER} µm on a panel: there is filler under it.`] : []

/**
 * PA 2, level 3: spots are means of three or more readings within 0.8 × least and 1.2 × greatest, the mean of five spots within the
 * specification. Spot rule read in a standards body's summary; levels from memory. On car panels by agreement.
 */
export const filmBySpots = defineSum({
  name: 'film-by-spots',
  title: 'Film thickness by spots (PA 2, level 3)',
  group: 'paint',
  formula:
    'spot = mean of 3 or more readings, within 0.8 × least … 1.2 × greatest; area = mean of the spots, within least … greatest',
  source:
    'PA 2: spots as read in a standards body’s summary, levels from memory. Written for structures; on car panels by agreement, common practice.',
  tolerance: 'Limits are inclusive; decided on full precision.',
  hazards: [],
  input: z.strictObject({
    least: measure('Specified from', 'µm', { above: 0, greatest: 3000 }),
    greatest: measure('to', 'µm', { above: 0, greatest: 3000 }),
    metal,
    gauge,
    spots: rows(
      'Spots',
      z.strictObject({
        readings: measures('Readings', 'µm', { least: 0, greatest: 5000, count: 3 }),
      }),
      'Five a panel; three readings or more in a circle of 4 cm.',
    ),
  }),
  reckon(input) {
    const { least, greatest, spots } = input
    const faults = wrongGauge(input.metal, input.gauge)
    if (least > greatest) faults.push(fault('greatest', 'to: not less than where it begins.'))
    if (spots.length < 5)
      faults.push(
        fault('spots', `Not enough readings: ${spots.length} of 5 spots. That is no fail.`),
      )
    if (faults.length > 0) return refuse(...faults)
    const means = spots.map(({ readings }) => mean(readings))
    const area = means.reduce((sum, spot) => sum.plus(spot), new Decimal(0)).div(means.length)
    const [low, high] = [new Decimal(least).times('0.8'), new Decimal(greatest).times('1.2')]
    const bad = means.flatMap((spot, i) => (spot.lt(low) || spot.gt(high) ? [i + 1] : []))
    const areaFails = area.lt(least) || area.gt(greatest)
    const words = [
      ...bad.map((spot) => `spot ${spot}`),
      ...(areaFails ? ['the mean of the area'] : []),
    ]
    return result(
      [
        ...means.map((spot, i) =>
          figure(`spot ${i + 1}`, `Spot ${i + 1}`, spot.toNumber(), 'µm', 1),
        ),
        figure('area', 'Mean of the area', area.toNumber(), 'µm', 1),
      ],
      {
        verdict:
          words.length === 0
            ? { passes: true, words: 'Within the specification' }
            : { passes: false, words: `Out: ${words.join(', ')}` },
        working: [
          `A spot may be ${low.toFixed(1)} to ${high.toFixed(1)} µm, the area ${least} to ${greatest} µm.`,
        ],
        warnings: thick(Math.max(...spots.flatMap(({ readings }) => readings))),
      },
    )
  },
})

/** The least nominal film for which the standard is written, in µm (scope of the 2012 edition, read). */
const LEAST_NOMINAL = 40

/**
 * The 80/20 rule of ISO 19840, as quoted by an inspectors' association from the 2005 national edition (read); the 2012 edition doesn't apply under 40 µm.
 */
export const filmByEightyTwenty = defineSum({
  name: 'film-80-20',
  title: 'Film thickness by the 80/20 rule',
  group: 'paint',
  formula:
    'mean ≥ nominal; every reading ≥ 0.8 × nominal; fewer than 20 % of them under nominal; none over the greatest agreed',
  source:
    'ISO 19840 as quoted by an inspectors’ association from the 2005 national edition (read); scope of the 2012 edition (read): rough steel, not under 40 µm. On car panels by agreement.',
  tolerance: 'Limits are inclusive; decided on full precision.',
  hazards: [],
  input: z.strictObject({
    nominal: measure('Nominal film', 'µm', { above: 0, greatest: 3000 }),
    times: measure('Greatest, times nominal', '×', {
      least: 1,
      greatest: 10,
      help: 'Often 3, by the maker.',
    }),
    metal,
    gauge,
    readings: measures('Readings', 'µm', { least: 0, greatest: 5000, count: 5 }),
  }),
  reckon({ nominal, times, metal: on, gauge: by, readings }) {
    const faults = wrongGauge(on, by)
    if (nominal < LEAST_NOMINAL)
      faults.push(
        fault('nominal', `Under ${LEAST_NOMINAL} µm the 80/20 rule does not apply: agree another.`),
      )
    if (faults.length > 0) return refuse(...faults)
    const floor = new Decimal(nominal).times('0.8')
    const average = mean(readings)
    const under = readings.filter((value) => floor.gt(value))
    const band = readings.filter((value) => floor.lte(value) && value < nominal)
    const over = readings.filter((value) => value > nominal * times)
    const words = [
      ...(average.lt(nominal) ? ['the mean is under nominal'] : []),
      ...(under.length > 0 ? [`${under.length} under 80 %`] : []),
      ...(band.length * 5 >= readings.length
        ? [`${band.length} of ${readings.length} between 80 and 100 %, must be fewer than 20 %`]
        : []),
      ...(over.length > 0 ? [`${over.length} over ${nominal * times} µm`] : []),
    ]
    return result(
      [
        figure('mean', 'Mean', average.toNumber(), 'µm', 1),
        figure('least', 'Least', Math.min(...readings), 'µm', 0),
        figure('in band', 'Between 80 and 100 %', band.length, '', 0),
      ],
      {
        verdict:
          words.length === 0
            ? { passes: true, words: 'Accepted' }
            : { passes: false, words: `Out: ${words.join('; ')}` },
        working: [`80 % of ${nominal} is ${floor.toFixed(1)} µm; ${readings.length} readings.`],
        warnings: thick(Math.max(...readings)),
      },
    )
  },
})
