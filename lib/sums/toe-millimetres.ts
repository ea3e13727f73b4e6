import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { measure } from './fields.ts'
import { ask, asTyped, defineSum, fault, figure, refuse, result } from './sum.ts'
import { TOE_SOURCE, toeFields } from './toe-fields.ts'

/** Toe in millimetres of what the book gives in degrees. */
export const toeMillimetres = defineSum({
  name: 'toe-millimetres',
  title: 'Toe, degrees to millimetres',
  group: 'running gear',
  formula: 'mm = 2D × sin(total ÷ 2); 60 minutes are a degree',
  source: TOE_SOURCE,
  tolerance: '0.01 mm',
  hazards: ['crushing'],
  input: z.strictObject({
    degrees: z.optional(
      measure('Degrees', '°', { least: -5, greatest: 5, help: 'In is plus, out is minus.' }),
    ),
    minutes: z.optional(measure('and minutes', '′', { least: -300, greatest: 300 })),
    ...toeFields,
  }),
  reckon({ degrees, minutes, given, at, diameter }, meant) {
    if (degrees === undefined && minutes === undefined)
      return refuse(fault('degrees', 'Degrees: missing. Give degrees, minutes, or both.'))
    const fraction = new Decimal(degrees ?? 0).mod(1)
    if (!fraction.eq(0) && minutes !== undefined && minutes !== 0)
      return refuse(
        fault('degrees', 'Degrees: whole ones beside minutes, or decimals without them.'),
      )
    if (!fraction.eq(0) && !meant('degrees')) {
      const asMinutes = fraction.times(100).toNumber()
      const whole = new Decimal(degrees ?? 0).minus(fraction).toNumber()
      const minutesFit = Math.abs(asMinutes) < 60
      if (minutesFit)
        return refuse(
          ask(
            'degrees',
            `Degrees ${degrees}: decimals of a degree, or ${whole}° ${Math.abs(asMinutes)}′?`,
            [
              {
                words: `${whole}° ${Math.abs(asMinutes)}′`,
                set: { degrees: whole, minutes: asMinutes },
              },
              asTyped('degrees', `${degrees}°, decimals`),
            ],
          ),
        )
    }
    const said = (degrees ?? 0) + (minutes ?? 0) / 60
    const total = given === 'total' ? said : 2 * said
    const mm = 2 * diameter * Math.sin((total * Math.PI) / 360)
    return result([figure('mm', 'Total toe', mm, 'mm')], {
      working: [
        `2 × ${diameter} × sin(${total.toFixed(4)}° ÷ 2) = ${mm.toFixed(3)} mm, at the ${at}`,
      ],
    })
  },
})
