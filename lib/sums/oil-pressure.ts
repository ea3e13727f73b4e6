import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

const SOURCE = 'Common practice, no source. The engine’s own figure replaces the rule.'

/** Least oil pressure of a hot engine by its speed: 10 psi for each 1000 rev/min. Another judgement altogether while priming. */
export const oilPressure = defineSum({
  name: 'oil-pressure',
  title: 'Oil pressure',
  group: 'engine',
  formula:
    'least, hot = rev/min ÷ 1000 × 10 psi, or the engine’s own figure; priming: 50 to 75 psi',
  source: SOURCE,
  tolerance: 'A floor of habit, not a specification.',
  hazards: ['rotating parts', 'fuel'],
  input: z.strictObject({
    state: choice('Engine', ['hot', 'cold', 'priming'], {
      hot: 'Hot, running',
      cold: 'Cold, running',
      priming: 'Being primed, cold',
    }),
    unit: choice('In', ['psi', 'bar', 'kPa'], { psi: 'psi', bar: 'bar', kPa: 'kPa' }),
    pressure: measure('Pressure', '', { least: 0, greatest: 1035 }),
    speed: z.optional(measure('Speed', 'rev/min', { least: 400, greatest: 9000 })),
    own: z.optional(measure('Engine’s own least', '', { above: 0, greatest: 1035 })),
  }),
  reckon({ state, unit, pressure, speed, own }) {
    const psi = convert(pressure, unit, 'psi')
    if (psi > 150)
      return refuse(fault('pressure', `Pressure: 0 to 150 psi; this is ${psi.toFixed(0)} psi.`))
    const shown = [
      figure('psi', 'Read', psi, 'psi', 1),
      figure('bar', 'Read', convert(pressure, unit, 'bar'), 'bar', 2),
    ]
    if (state === 'cold')
      return refuse(
        fault(
          'state',
          'Engine: a cold reading isn’t judged by the rule for a hot one. Read it again at its working temperature.',
        ),
      )
    if (state === 'priming') {
      const passes = psi >= 50 && psi <= 75
      return result(shown, {
        verdict: {
          passes,
          words: passes
            ? 'Plausible for priming'
            : 'Outside 50 to 75 psi: look before it is started',
        },
        warnings: ['Zero after 15 to 20 s of cranking: stop, in any engine.'],
      })
    }
    if (own === undefined && speed === undefined)
      return refuse(
        fault('speed', 'Speed: missing. The rule goes by it; or give the engine’s own least.'),
      )
    const least = own === undefined ? ((speed ?? 0) / 1000) * 10 : convert(own, unit, 'psi')
    const passes = psi >= least
    return result([...shown, figure('least', 'Needed', least, 'psi', 1)], {
      verdict: { passes, words: passes ? 'Enough' : 'Low: stop and look' },
      working: [
        own === undefined
          ? `${speed} ÷ 1000 × 10 = ${least.toFixed(1)} psi`
          : `The engine’s own: ${own} ${unit}`,
      ],
    })
  },
})
