import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { measure } from './fields.ts'
import { ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

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
    length: measure('Length of a piece', 'mm', {
      above: 0,
      greatest: 20_000,
      help: 'Along the nap.',
    }),
    width: measure('Width of a piece', 'mm', { above: 0, greatest: 20_000 }),
    roll: measure('Width of the cloth', 'mm', { above: 0, greatest: 5000 }),
    allowance: measure('Allowance', '%', { least: 0, greatest: 100 }),
    repeat: z.optional(measure('Pattern repeat', 'mm', { above: 0, greatest: 5000 })),
  }),
  reckon({ pieces, length, width, roll, allowance, repeat }) {
    if (!Number.isInteger(pieces))
      return refuse(fault('pieces', `Pieces: counted whole; ${pieces} is not.`))
    if (width > roll) return refuse(tooWide(length, width, roll))
    const piece =
      repeat === undefined
        ? new Decimal(length)
        : new Decimal(length).div(repeat).round(0, 3).times(repeat)
    const across = new Decimal(roll).div(width).round(0, 0).toNumber()
    const down = Math.ceil(pieces / across)
    const metres = piece.times(down).times(new Decimal(allowance).div(100).plus(1)).div(1000)
    return result(
      [
        figure('length', 'Cloth', metres.toNumber(), 'm'),
        figure('across', 'Across', across, '', 0),
        figure('rows', 'Rows', down, '', 0),
        figure('piece', 'A piece becomes', piece.toNumber(), 'mm', 0),
      ],
      {
        working: [
          `${roll} ÷ ${width}: ${across} across; ${pieces} ÷ ${across}: ${down} rows`,
          `${down} × ${piece.toFixed()} mm × (1 + ${allowance} %) = ${metres.toFixed(3)} m`,
        ],
        warnings: ['All from one dye lot, the nap one way.'],
      },
    )
  },
})

function tooWide(length: number, width: number, roll: number): Fault {
  const words = 'Width of a piece: wider than the cloth.'
  return length > roll
    ? fault('width', `${words} It must be seamed, or the cloth be wider.`)
    : ask('width', `${words} May the pieces be turned? Not where nap or pattern runs one way.`, [
        { words: 'Yes, turn them', set: { length: width, width: length } },
      ])
}
