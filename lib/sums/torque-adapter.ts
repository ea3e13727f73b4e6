import * as z from 'zod/mini'
import { boltFields, boltSaid, notToTighten } from './bolt.ts'
import { measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'
import { torqueUnit } from './torque-units.ts'
import { convert } from './units.ts'

/** A wrench's setting with an adapter: setting = T·L ÷ (L + E·cos a). Lever arithmetic; ISO 6789 for the wrench (titles read). */
export const torqueAdapter = defineSum({
  name: 'torque-adapter',
  title: 'Torque wrench with an adapter',
  group: 'bolts',
  formula: 'setting = torque × L ÷ (L + E × cos a)',
  source:
    'Lever arithmetic. ISO 6789-1 and -2:2017 for hand torque tools (titles read); their interval from a commentary on the 2003 edition (read).',
  tolerance: '0.1 of the unit',
  hazards: [],
  input: z.strictObject({
    torque: measure('Torque wanted', '', { above: 0, greatest: 5000 }),
    unit: torqueUnit('In'),
    length: measure('Wrench, drive to middle of grip', 'mm', { above: 0, greatest: 3000 }),
    adapter: measure('Adapter', 'mm', {
      least: 0,
      greatest: 1000,
      help: 'From the drive to the middle of the bolt.',
    }),
    angle: measure('Angle of the adapter', '°', {
      least: 0,
      greatest: 180,
      help: '0 in line, 90 needs no correction, 180 folded back.',
    }),
    ...boltFields,
  }),
  reckon({ torque, unit, length, adapter, angle, ...bolt }) {
    if (bolt.bolt === 'tightened by angle')
      return refuse(
        fault('bolt', 'What bolt: no adapter on one that is tightened by angle. Use a socket.'),
      )
    const not = notToTighten(bolt)
    if (not !== null) return not
    // Exactly nothing at a right angle, whatever the cosine of a rounded π.
    const reach = angle === 90 ? 0 : adapter * Math.cos((angle * Math.PI) / 180)
    if (length + reach <= 0)
      return refuse(fault('adapter', 'Adapter: folded back it reaches beyond the grip.'))
    const setting = (torque * length) / (length + reach)
    const other = unit === 'N·m' ? 'lbf·ft' : 'N·m'
    return result(
      [
        figure('setting', 'Set the wrench to', setting, unit, 1),
        figure('other', 'The same', convert(setting, unit, other), other, 1),
      ],
      {
        working: [
          `${torque} × ${length} ÷ (${length} + ${reach.toFixed(2)}) = ${setting.toFixed(2)} ${unit}`,
          boltSaid(bolt),
        ],
        warnings:
          bolt.bolt === 'ordinary'
            ? []
            : ['On head, main and rod bolts use a socket, not an adapter.'],
      },
    )
  },
})
