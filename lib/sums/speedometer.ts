import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, figure, refuse, result } from './sum.ts'
import { rollingOf, TYRE_SOURCE, tyreBuild, tyreFields } from './tyre.ts'

const before = tyreFields(' before')
const now = tyreFields(' now')

/** What a speedometer says after another tyre. */
export const speedometer = defineSum({
  name: 'speedometer',
  title: 'Speedometer after another tyre',
  group: 'running gear',
  formula: 'true speed = shown × new circumference ÷ old',
  source: TYRE_SOURCE,
  tolerance: '0.1 %; the real tyre 2 %',
  hazards: ['road'],
  input: z.strictObject({
    build: tyreBuild,
    oldWidth: z.optional(before.width),
    oldAspect: z.optional(before.aspect),
    oldRim: z.optional(before.rim),
    oldRollOut: z.optional(before.rollOut),
    newWidth: z.optional(now.width),
    newAspect: z.optional(now.aspect),
    newRim: z.optional(now.rim),
    newRollOut: z.optional(now.rollOut),
    shown: measure('Speed shown', '', { above: 0, greatest: 300 }),
    unit: choice('In', ['km/h', 'mph'], { 'km/h': 'km/h', mph: 'mph' }),
  }),
  reckon({ build, shown, unit, ...tyres }) {
    const old = rollingOf(
      {
        width: tyres.oldWidth,
        aspect: tyres.oldAspect,
        rim: tyres.oldRim,
        rollOut: tyres.oldRollOut,
      },
      build,
      { width: 'oldWidth', aspect: 'oldAspect', rim: 'oldRim', rollOut: 'oldRollOut' },
    )
    const fitted = rollingOf(
      {
        width: tyres.newWidth,
        aspect: tyres.newAspect,
        rim: tyres.newRim,
        rollOut: tyres.newRollOut,
      },
      build,
      { width: 'newWidth', aspect: 'newAspect', rim: 'newRim', rollOut: 'newRollOut' },
    )
    if (typeof old !== 'number') return refuse(old)
    if (typeof fitted !== 'number') return refuse(fitted)
    const ratio = fitted / old
    return result(
      [
        figure('true', 'The car really does', shown * ratio, unit, 1),
        figure('error', 'Against what is shown', (ratio - 1) * 100, '%', 1),
      ],
      {
        working: [`${fitted.toFixed(0)} ÷ ${old.toFixed(0)} = ${ratio.toFixed(4)}`],
        warnings:
          ratio > 1
            ? ['It shows less than the car does: have it set before it goes on the road.']
            : [],
      },
    )
  },
})
