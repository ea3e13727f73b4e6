import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

const units = ['N·m', 'lbf·ft', 'lbf·in', 'kgf·m'] as const
const unit = (label: string) =>
  choice(label, units, { N·m: 'N·m', lbf·ft: 'lbf·ft', lbf·in: 'lbf·in', kgf·m: 'kgf·m' })
const bolt = choice(
  'What bolt',
  ['ordinary', 'head, main or rod', 'tightened by angle', 're-used stretch bolt'],
  {
    ordinary: 'An ordinary one',
    'head, main or rod': 'Head, main or rod bolt',
    'tightened by angle': 'One that is tightened by angle',
    're-used stretch bolt': 'A stretch bolt, used before',
  },
)
const DRY =
  'A dry figure is not valid oiled: write down how the thread was. The wrench is in date (12 months or 5000 cycles unless the shop’s procedure says otherwise).'

/** A wrench's setting with an adapter: setting = T·L ÷ (L + E·cos a). Lever arithmetic; ISO 6789 for the wrench (titles read). */
export const torqueAdapter = defineSum({
  name: 'torque-adapter',
  title: 'Torque wrench with an adapter',
  group: 'bolts',
  formula: 'setting = torque × L ÷ (L + E × cos a)',
  source: 'Lever arithmetic. ISO 6789-1 and -2:2017 for hand torque tools (titles read).',
  tolerance: '0.1 of the unit',
  hazards: [],
  input: z.strictObject({
    torque: measure('Torque wanted', '', { above: 0, greatest: 5000 }),
    unit: unit('In'),
    length: measure('Wrench, drive to middle of grip', '', { above: 0, greatest: 3000 }),
    adapter: measure('Adapter', '', {
      least: 0,
      greatest: 1000,
      help: 'In the same unit as the wrench.',
    }),
    angle: measure('Angle of the adapter', '°', {
      least: 0,
      greatest: 180,
      help: '0 in line, 90 needs no correction, 180 folded back.',
    }),
    bolt,
  }),
  reckon({ torque, unit: of, length, adapter, angle, bolt: which }) {
    if (which === 'tightened by angle')
      return refuse(fault('bolt', 'What bolt: no adapter on one that is tightened by angle.'))
    if (which === 're-used stretch bolt')
      return refuse(
        fault('bolt', 'What bolt: a stretch bolt is not used again unless its maker allows it.'),
      )
    // Exactly nothing at a right angle, whatever the cosine of a rounded π.
    const reach = angle === 90 ? 0 : adapter * Math.cos((angle * Math.PI) / 180)
    if (length + reach <= 0)
      return refuse(fault('adapter', 'Adapter: folded back it reaches beyond the grip.'))
    const setting = (torque * length) / (length + reach)
    return result([figure('setting', 'Set the wrench to', setting, of, 1)], {
      working: [
        `${torque} × ${length} ÷ (${length} + ${reach.toFixed(2)}) = ${setting.toFixed(1)} ${of}`,
      ],
      warnings: [
        ...(which === 'head, main or rod'
          ? ['On head, main and rod bolts use a socket, not an adapter.']
          : []),
        DRY,
      ],
    })
  },
})

/** A torque in another unit, by exact products. */
export const torqueUnits = defineSum({
  name: 'torque-units',
  title: 'Torque in another unit',
  group: 'bolts',
  formula:
    '1 lbf·ft = 0.3048 × 0.45359237 × 9.80665 N·m; 1 lbf·in a twelfth of it; 1 kgf·m = 9.80665 N·m',
  source: 'NIST SP 811 appendix B (from memory); factors exact.',
  tolerance: '1e-9 of the figure',
  hazards: [],
  input: z.strictObject({
    torque: measure('Torque', '', { above: 0, greatest: 100_000 }),
    from: unit('In'),
    to: unit('Wanted in'),
  }),
  reckon({ torque, from, to }) {
    const value = convert(torque, from, to)
    return result([figure('torque', 'Torque', value, to, 2)], { warnings: [DRY] })
  },
})

/** How far a nut travels through an angle. */
export const torqueAngle = defineSum({
  name: 'torque-angle',
  title: 'Tightening by angle',
  group: 'bolts',
  formula: 'travel = pitch × angle ÷ 360, before the joint gives',
  source: 'Geometry of the thread.',
  tolerance: '0.001 mm',
  hazards: [],
  input: z.strictObject({
    pitch: measure('Pitch', 'mm', { above: 0, greatest: 10 }),
    angle: measure('Angle', '°', { above: 0, greatest: 1080, help: 'A flat of a hexagon is 60°.' }),
  }),
  reckon: ({ pitch, angle }) =>
    result(
      [
        figure('travel', 'Travel of the nut', (pitch * angle) / 360, 'mm', 3),
        figure('flats', 'In flats', angle / 60, '', 2),
      ],
      {
        working: [`${pitch} × ${angle} ÷ 360`],
        warnings: ['No adapter on a bolt that is tightened by angle.'],
      },
    ),
})
