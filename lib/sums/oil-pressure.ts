import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { choice, measure } from './fields.ts'
import { ask, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

const PSI_PER_1000 = 10
const MOST_PSI = 150

/** Least oil pressure of a hot engine by its speed: 10 psi for each 1000 rev/min. */
export const oilPressure = defineSum({
  name: 'oil-pressure',
  title: 'Oil pressure, hot and running',
  group: 'engine',
  formula: 'least = rev/min ÷ 1000 × 10 psi, or the engine’s own figure',
  source: 'Common practice, no source. The engine’s own figure replaces the rule.',
  tolerance: 'A floor of habit, not a specification.',
  hazards: ['rotating parts', 'high pressure'],
  input: z.strictObject({
    unit: choice('In', ['psi', 'bar', 'kPa'], { psi: 'psi', bar: 'bar', kPa: 'kPa' }),
    pressure: measure('Pressure', '', { least: 0, greatest: 1035 }),
    speed: measure('Speed', 'rev/min', { least: 400, greatest: 9000 }),
    oil: z.optional(choice('The oil is', ['hot', 'cold'], { hot: 'hot', cold: 'cold' })),
    own: z.optional(
      measure('Engine’s own least', '', {
        above: 0,
        greatest: 1035,
        help: 'Its maker’s, hot and at this speed: it replaces the rule.',
      }),
    ),
  }),
  reckon({ unit, pressure, speed, oil, own }) {
    const psi = convert(pressure, unit, 'psi')
    if (psi > MOST_PSI)
      return refuse(
        fault(
          'pressure',
          `Pressure: 0 to ${MOST_PSI} psi; this is ${psi.toFixed(0)} psi. Is the unit right?`,
        ),
      )
    if (oil === undefined)
      return refuse(
        ask('oil', 'What is the oil’s temperature? The rule is for hot oil.', [
          { words: 'It is hot', set: { oil: 'hot' } },
          { words: 'It is cold', set: { oil: 'cold' } },
        ]),
      )
    if (oil === 'cold')
      return refuse(
        fault(
          'oil',
          'Cold oil isn’t judged by the rule for hot: read it again at its working temperature.',
        ),
      )
    const rule = new Decimal(speed).div(1000).times(PSI_PER_1000)
    const least = own === undefined ? rule : new Decimal(convert(own, unit, 'psi'))
    const passes = least.lte(psi)
    return result(
      [
        figure('least', 'Needed', least.toNumber(), 'psi', 1),
        figure('psi', 'Read', psi, 'psi', 1),
        figure('bar', 'Read', convert(pressure, unit, 'bar'), 'bar'),
      ],
      {
        verdict: { passes, words: passes ? 'Enough' : 'Low: stop and look' },
        working: [
          own === undefined
            ? `${speed} ÷ 1000 × ${PSI_PER_1000} = ${rule.toFixed(1)} psi`
            : `The engine’s own ${own} ${unit} replaces the rule (${rule.toFixed(1)} psi).`,
        ],
      },
    )
  },
})
