import * as z from 'zod/mini'
import { measure } from './fields.ts'
import { defineSum, figure, refuse, result } from './sum.ts'
import { diameterOf, rollingOf, TYRE_SOURCE, tyreBuild, tyreFields } from './tyre.ts'
import { convert } from './units.ts'

const { width, aspect, rim, rollOut } = tyreFields()

/** Tyre, axle and gear to road speed. */
export const gearing = defineSum({
  name: 'gearing',
  title: 'Gearing and road speed',
  group: 'running gear',
  formula:
    'diameter = rim × 25.4 + 2 × width × aspect ÷ 100; rolling = 3.05 × diameter; km/h per 1000 rev/min = rolling × 0.06 ÷ (axle × gear)',
  source: TYRE_SOURCE,
  tolerance: '0.1 %; the real tyre 2 %',
  hazards: [],
  input: z.strictObject({
    build: tyreBuild,
    width: z.optional(width),
    aspect: z.optional(aspect),
    rim: z.optional(rim),
    rollOut: z.optional(rollOut),
    axle: measure('Axle', ':1', { above: 0, greatest: 10 }),
    gear: measure('Gear', ':1', { above: 0, greatest: 10 }),
  }),
  reckon({ build, axle, gear, ...tyre }) {
    const rolling = rollingOf(tyre, build, {
      width: 'width',
      aspect: 'aspect',
      rim: 'rim',
      rollOut: 'rollOut',
    })
    if (typeof rolling !== 'number') return refuse(rolling)
    const diameter = diameterOf(tyre)
    const speed = (rolling * 0.06) / (axle * gear)
    return result(
      [
        figure('km/h', 'For 1000 rev/min', speed, 'km/h'),
        figure('mph', 'For 1000 rev/min', convert(speed, 'km/h', 'mph'), 'mph'),
        ...(diameter === null ? [] : [figure('diameter', 'Diameter', diameter, 'mm', 1)]),
        figure('rolling', 'Rolling circumference', rolling, 'mm', 0),
      ],
      {
        working: [`${rolling.toFixed(0)} × 0.06 ÷ (${axle} × ${gear}) = ${speed.toFixed(2)} km/h`],
      },
    )
  },
})
