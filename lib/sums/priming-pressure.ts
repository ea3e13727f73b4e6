import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert } from './units.ts'

/** Plausible with a priming drive on a cold, closed engine; common practice. */
const BAND_PSI = { least: 50, greatest: 75 }
/** By then oil has moved in any engine. */
const STOP_AFTER_S = 15

/** What the oil gauge says before a first start: another reading than that of a running engine. */
export const primingPressure = defineSum({
  name: 'priming-pressure',
  title: 'Oil pressure, priming or cranking',
  group: 'engine',
  formula: 'with a priming drive 50 to 75 psi is plausible; nothing after 15 to 20 s: stop',
  source: 'Common practice, no source.',
  tolerance: 'A plausible band, not a limit: the engine’s own figure replaces it.',
  hazards: ['rotating parts', 'high pressure', 'battery'],
  input: z.strictObject({
    by: choice('Oil is driven by', ['drive', 'starter'], {
      drive: 'a priming drive, engine cold and closed',
      starter: 'the starter, plugs out',
    }),
    seconds: measure('For', 's', { above: 0, greatest: 600 }),
    unit: choice('In', ['psi', 'bar', 'kPa'], { psi: 'psi', bar: 'bar', kPa: 'kPa' }),
    pressure: measure('Pressure', '', { least: 0, greatest: 1035 }),
  }),
  reckon({ by, seconds, unit, pressure }) {
    const psi = convert(pressure, unit, 'psi')
    if (psi > 150) return refuse(fault('pressure', 'Pressure: over 150 psi. Is the unit right?'))
    const shown = [
      figure('psi', 'Read', psi, 'psi', 1),
      figure('bar', 'Read', convert(pressure, unit, 'bar'), 'bar'),
    ]
    if (psi === 0 && seconds < STOP_AFTER_S)
      return result(shown, {
        warnings: [`Nothing yet: stop if it is so after ${STOP_AFTER_S} to 20 s.`],
      })
    if (psi === 0)
      return result(shown, {
        verdict: { passes: false, words: `Nothing after ${seconds} s: stop, in any engine` },
      })
    if (by === 'starter')
      return result(shown, {
        warnings: ['Oil moves. How much is enough on the starter, the engine’s own figure says.'],
      })
    const passes = psi >= BAND_PSI.least && psi <= BAND_PSI.greatest
    return result(shown, {
      verdict: {
        passes,
        words: passes ? 'Plausible for priming' : 'Outside 50 to 75 psi: look before it is started',
      },
    })
  },
})
