import * as z from 'zod/mini'
import { boltFields, boltSaid, notToTighten } from './bolt.ts'
import { measure } from './fields.ts'
import { defineSum, figure, result } from './sum.ts'

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
    ...boltFields,
  }),
  reckon({ pitch, angle, ...bolt }) {
    const travel = (pitch * angle) / 360
    return (
      notToTighten(bolt) ??
      result(
        [
          figure('travel', 'Travel of the nut', travel, 'mm', 3),
          figure('flats', 'In flats', angle / 60, '', 2),
        ],
        {
          working: [`${pitch} × ${angle} ÷ 360 = ${travel.toFixed(4)} mm`, boltSaid(bolt)],
          warnings: ['No adapter on a bolt that is tightened by angle.'],
        },
      )
    )
  },
})
