import * as z from 'zod/mini'
import { choice, measure, measures } from './fields.ts'
import { ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

/** Under this a bore or stroke in mm was probably typed in inches. */
const INCHES_UNDER = 20
const bore = (label: string) => measure(label, 'mm', { above: 0, greatest: 250 })
const inchesMeant = (field: string, label: string, value: number): Fault[] =>
  value < INCHES_UNDER
    ? [
        ask(
          field,
          `${label} ${value} mm: are inches meant? ${value} in is ${(value * 25.4).toFixed(1)} mm.`,
        ),
      ]
    : []

/** Swept volume and compression ratio: geometry; ISO 7967 for the terms (from memory). Gasket thickness is as crushed. */
export const compressionRatio = defineSum({
  name: 'compression-ratio',
  title: 'Swept volume and compression ratio',
  group: 'engine',
  formula:
    'swept = π ÷ 4 × bore² × stroke; clearance = chamber + gasket + deck − dome; ratio = (swept + clearance) ÷ clearance',
  source: 'Geometry; ISO 7967 gives the terms (from memory).',
  tolerance: '0.01 cc, 0.01 of the ratio',
  hazards: [],
  input: z.strictObject({
    bore: bore('Bore'),
    stroke: bore('Stroke'),
    cylinders: measure('Cylinders', '', { least: 1, greatest: 16 }),
    chamber: measure('Chamber', 'cc', { least: 0, greatest: 500 }),
    gasketBore: bore('Bore of the gasket'),
    gasket: measure('Gasket, crushed', 'mm', { least: 0, greatest: 10 }),
    deck: measure('Piston below the deck', 'mm', {
      least: -10,
      greatest: 20,
      help: 'Minus where it stands proud.',
    }),
    dome: measure('Dome of the piston', 'cc', {
      least: -100,
      greatest: 100,
      help: 'A dish is minus.',
    }),
  }),
  reckon(input) {
    const asked = [
      ...inchesMeant('bore', 'Bore', input.bore),
      ...inchesMeant('stroke', 'Stroke', input.stroke),
      ...inchesMeant('gasketBore', 'Bore of the gasket', input.gasketBore),
    ]
    if (asked.length > 0) return refuse(...asked)
    const disc = (d: number, h: number) => ((Math.PI / 4) * d * d * h) / 1000
    const swept = disc(input.bore, input.stroke)
    const gasket = disc(input.gasketBore, input.gasket)
    const deck = disc(input.bore, input.deck)
    const clearance = input.chamber + gasket + deck - input.dome
    if (clearance <= 0)
      return refuse(
        fault(
          'dome',
          'Dome of the piston: nothing would be left above the piston. Is its sign right?',
        ),
      )
    const ratio = (swept + clearance) / clearance
    return result(
      [
        figure('swept', 'Swept, each', swept, 'cc'),
        figure('engine', 'Swept, all', swept * input.cylinders, 'cc', 1),
        figure('clearance', 'Clearance', clearance, 'cc'),
        figure('ratio', 'Compression ratio', ratio, ':1'),
      ],
      {
        working: [
          `π ÷ 4 × ${input.bore}² × ${input.stroke} ÷ 1000 = ${swept.toFixed(2)} cc`,
          `${input.chamber} + ${gasket.toFixed(2)} (gasket) + ${deck.toFixed(2)} (deck) − ${input.dome} = ${clearance.toFixed(2)} cc`,
        ],
        warnings:
          ratio < 5 || ratio > 16 ? ['A ratio outside 5 to 16: look at the figures again.'] : [],
      },
    )
  },
})

/** Compression test: lowest over highest. Common practice, no source; the limit is agreed in the build order. */
export const compressionSpread = defineSum({
  name: 'compression-spread',
  title: 'Compression test, spread',
  group: 'engine',
  formula: 'lowest ÷ highest ≥ the limit agreed',
  source: 'Common practice, no source.',
  tolerance: 'Decided on full precision.',
  hazards: ['rotating parts', 'fuel'],
  input: z.strictObject({
    unit: choice('In', ['psi', 'kPa', 'bar'], { psi: 'psi', kPa: 'kPa', bar: 'bar' }),
    readings: measures('Cylinders, in order', '', {
      least: 0,
      greatest: 2758,
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
    own: z.optional(measure('The engine’s own figure', '', { above: 0, greatest: 2758 })),
  }),
  reckon({ unit, readings, limit, own }) {
    const most = convert(400, 'psi', unit)
    const high = readings.findIndex((value) => value >= most)
    if (high !== -1)
      return refuse(
        ask(
          `readings.${high}`,
          `Cylinder ${high + 1}: ${readings[high]} ${unit} is over 400 psi. Is the unit right?`,
        ),
      )
    const [lowest, highest] = [Math.min(...readings), Math.max(...readings)]
    if (highest === 0)
      return refuse(fault('readings', 'Cylinders, in order: none of them reads anything.'))
    const ratio = lowest / highest
    const at = readings.indexOf(lowest) + 1
    const passes = lowest > 0 && ratio >= Number(limit)
    const mean = readings.reduce((sum, value) => sum + value, 0) / readings.length
    return result(
      [
        figure('ratio', 'Lowest to highest', ratio, '', 3),
        figure('lowest', 'Lowest cylinder', at, '', 0),
        figure('mean', 'Mean', mean, unit, unit === 'bar' ? 2 : 0),
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
        warnings: [
          ...(own === undefined
            ? []
            : [
                `Mean ${mean.toFixed(unit === 'bar' ? 2 : 0)} against the engine’s own ${own} ${unit}.`,
              ]),
          'With a spoon of oil: a rise of more than some 10 to 15 % points at rings rather than valves (common practice).',
        ],
      },
    )
  },
})
