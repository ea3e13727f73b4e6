import * as z from 'zod/mini'
import { Decimal, sumOf } from './decimal.ts'
import { measure, measures, words } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'

const limits = { least: -5, greatest: 25 }
const SOURCE =
  'Common practice, no source; ISO 1101 and ISO 8015 name the idea of tolerance (from memory).'
const named = (points: readonly number[]) => points.map((point) => `point ${point}`)

/** Panel gap at numbered points. Decided in decimals: 4.5 + 0.5 is 5.0. */
export const panelGap = defineSum({
  name: 'panel-gap',
  title: 'Panel gap',
  group: 'panels',
  formula:
    'every point within agreed ± tolerance; greatest − least within the taper; left against right of the same point within its own',
  source: SOURCE,
  tolerance: 'Limits are inclusive; nothing is rounded before it is compared.',
  hazards: [],
  input: z.strictObject({
    agreed: measure('Agreed gap', 'mm', limits),
    tolerance: measure('Tolerance', '± mm', { least: 0, greatest: 5 }),
    taper: measure('Taper along the gap, at most', 'mm', { least: 0, greatest: 10 }),
    points: measure('Points on the sheet', '', { least: 1, greatest: 50 }),
    gauge: words('Gauge', 'Feeler or taper gauge.'),
    readings: measures('Readings', 'mm', limits),
    otherSide: z.optional(measures('The other side, same points', 'mm', limits)),
    sides: z.optional(measure('Left against right, at most', 'mm', { least: 0, greatest: 10 })),
  }),
  reckon({ agreed, tolerance, taper, points, readings, otherSide, sides }): Answer {
    if (readings.length < points)
      return refuse(
        fault(
          'readings',
          `Readings: ${readings.length} of ${points} points; the sheet is not complete.`,
        ),
      )
    if (otherSide !== undefined && otherSide.length !== readings.length)
      return refuse(fault('otherSide', 'The other side: as many points as this side.'))
    if (otherSide !== undefined && sides === undefined)
      return refuse(fault('sides', 'Left against right: missing. A blank is not zero.'))
    const [low, high] = [new Decimal(agreed).minus(tolerance), new Decimal(agreed).plus(tolerance)]
    const out = readings.flatMap((value, i) => (low.gt(value) || high.lt(value) ? [i + 1] : []))
    const spread = new Decimal(Math.max(...readings)).minus(Math.min(...readings))
    const uneven = (otherSide ?? []).flatMap((value, i) =>
      new Decimal(value)
        .minus(readings[i] ?? value)
        .abs()
        .gt(sides ?? 0)
        ? [i + 1]
        : [],
    )
    const wrong = [
      ...named(out),
      ...(spread.gt(taper) ? ['taper'] : []),
      ...named(uneven).map((point) => `${point} against the other side`),
    ]
    return result(
      [
        figure(
          'mean',
          'Mean',
          new Decimal(sumOf(readings)).div(readings.length).toNumber(),
          'mm',
          2,
        ),
        figure('taper', 'Taper', spread.toNumber(), 'mm', 1),
      ],
      {
        verdict: {
          passes: wrong.length === 0,
          words: wrong.length === 0 ? 'As agreed' : `Out: ${wrong.join('; ')}`,
        },
        working: [`Each point ${low.toFixed(1)} to ${high.toFixed(1)} mm`],
        warnings: ['The agreed gap is the signed sheet’s or the build order’s, never this tool’s.'],
      },
    )
  },
})

/** Flush of a panel against its neighbour. */
export const flush = defineSum({
  name: 'flush',
  title: 'Flush of panels',
  group: 'panels',
  formula: 'every point within the limits; plus is proud',
  source: SOURCE,
  tolerance: 'Limits are inclusive.',
  hazards: [],
  input: z.strictObject({
    panel: words('Panel that is named', 'Plus where it stands proud.'),
    least: measure('From', 'mm', limits),
    greatest: measure('to', 'mm', limits),
    readings: measures('Readings', 'mm', limits),
  }),
  reckon({ panel, least, greatest, readings }): Answer {
    if (least > greatest)
      return refuse(ask('greatest', 'to: less than where it begins. Are they the wrong way round?'))
    const out = readings.flatMap((value, i) => (value < least || value > greatest ? [i + 1] : []))
    return result(
      [
        figure('most', 'Most proud', Math.max(...readings), 'mm', 1),
        figure('least', 'Most sunk', Math.min(...readings), 'mm', 1),
      ],
      {
        verdict: {
          passes: out.length === 0,
          words: out.length === 0 ? `${panel}: as agreed` : `Out: ${named(out).join(', ')}`,
        },
        warnings: ['The rearward panel should not stand proud into the wind (common practice).'],
      },
    )
  },
})

/** Whole sheets of hide: pattern ÷ (1 − waste), not × (1 + waste). */
export const hides = defineSum({
  name: 'hides',
  title: 'Hides for a trim set',
  group: 'trim',
  formula: 'hide area = pattern ÷ (1 − waste); hides rounded up',
  source: 'Common practice, no source; 1 sq ft = 0.09290304 m² exactly.',
  tolerance: '0.1 sq ft; counts exact',
  hazards: ['cutting'],
  input: z.strictObject({
    pattern: measure('Pattern area', 'sq ft', { above: 0, greatest: 2000 }),
    waste: measure('Waste', '%', {
      least: 0,
      greatest: 89.999,
      help: '25 to 40 on hides with marks and curves.',
    }),
    hide: measure('A hide, about', 'sq ft', { above: 0, greatest: 100 }),
  }),
  reckon({ pattern, waste, hide }) {
    if (waste > 0 && waste < 1)
      return refuse(ask('waste', `Waste ${waste}: is ${waste} % meant, or ${waste * 100} %?`))
    const area = pattern / (1 - waste / 100)
    return result(
      [
        figure('sq ft', 'Hide area', area, 'sq ft', 1),
        figure('m²', 'Hide area', area * 0.09290304, 'm²'),
        figure('hides', 'Hides', Math.ceil(new Decimal(area).div(hide).toNumber()), '', 0),
      ],
      {
        working: [`${pattern} ÷ (1 − ${waste / 100}) = ${area.toFixed(1)} sq ft`],
        warnings: ['All from one dye lot, and one spare if the budget allows (common practice).'],
      },
    )
  },
})

/** Length of cloth for equal pieces. */
export const cloth = defineSum({
  name: 'cloth',
  title: 'Cloth by pieces',
  group: 'trim',
  formula:
    'across = floor(roll ÷ width); rows = ceil(pieces ÷ across); length = rows × piece × (1 + allowance); with a pattern each piece is rounded up to a whole repeat',
  source: 'Common practice, no source.',
  tolerance: 'Counts exact',
  hazards: ['cutting'],
  input: z.strictObject({
    pieces: measure('Pieces', '', { least: 1, greatest: 1000 }),
    length: measure('Length of a piece', 'mm', { above: 0, greatest: 20_000 }),
    width: measure('Width of a piece', 'mm', { above: 0, greatest: 20_000 }),
    roll: measure('Width of the cloth', 'mm', { above: 0, greatest: 5000 }),
    allowance: measure('Allowance', '%', { least: 0, greatest: 100 }),
    repeat: z.optional(measure('Pattern repeat', 'mm', { above: 0, greatest: 5000 })),
  }),
  reckon({ pieces, length, width, roll, allowance, repeat }): Answer {
    if (width > roll)
      return refuse(
        fault(
          'width',
          'Width of a piece: wider than the cloth. A napped piece isn’t turned unasked.',
        ),
      )
    const piece =
      repeat === undefined ? length : Math.ceil(new Decimal(length).div(repeat).toNumber()) * repeat
    const across = Math.floor(roll / width)
    const rowsOf = Math.ceil(pieces / across)
    const total = (rowsOf * piece * (1 + allowance / 100)) / 1000
    return result(
      [
        figure('piece', 'A piece becomes', piece, 'mm', 0),
        figure('across', 'Across', across, '', 0),
        figure('rows', 'Rows', rowsOf, '', 0),
        figure('length', 'Cloth', total, 'm'),
      ],
      {
        working: [`${rowsOf} × ${piece} × ${1 + allowance / 100} ÷ 1000 = ${total.toFixed(2)} m`],
        warnings: ['Nap one way. Piping: sum of the seams × 1.1.'],
      },
    )
  },
})
