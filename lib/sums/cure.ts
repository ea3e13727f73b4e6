import * as z from 'zod/mini'
import { measure, rows } from './fields.ts'
import { type Answer, defineSum, fault, figure, refuse, result } from './sum.ts'

/** Below this the metal is too cold to cure at all, and above that the rule says nothing; °C. */
export const CURES_FROM = 10
const CURES_TO = 60

/**
 * By how much longer a cure takes with metal at `celsius` than at `reference`: ten degrees colder doubles it. Infinite below 10 °C: it doesn't cure.
 * Common practice, no source (the rule of thumb for rates of reaction).
 */
export const cureFactor = (celsius: number, reference: number): number =>
  celsius < CURES_FROM ? Number.POSITIVE_INFINITY : 2 ** ((reference - celsius) / 10)

/** Which share of a cure of `hours` at `reference` °C those spells of metal temperature have done. */
export const curedShare = (
  spells: readonly { readonly hours: number; readonly celsius: number }[],
  hours: number,
  reference: number,
): number =>
  spells.reduce(
    (done, spell) => done + spell.hours / (hours * cureFactor(spell.celsius, reference)),
    0,
  )

const metal = (label: string) => measure(label, '°C', { least: -30, greatest: 90 })

/** How long a coat cures at another metal temperature than the sheet's. An estimate: it may lengthen a wait, never shorten one. */
export const cure = defineSum({
  name: 'cure',
  title: 'Cure and flash-off by metal temperature',
  group: 'paint',
  formula:
    't = t of the sheet × 2^((T of the sheet − T) ÷ 10); with a log the sum of dt ÷ t(T) must reach 1',
  source: 'Common practice, no source: the rule of thumb for rates of reaction.',
  tolerance:
    'An estimate, good to some 10 %. It only lengthens a wait; a shorter one takes the data sheet’s own bake schedule.',
  hazards: ['isocyanate', 'solvent'],
  input: z.strictObject({
    hours: measure('On the sheet', 'h', { above: 0, greatest: 1000 }),
    reference: measure('At', '°C', { least: CURES_FROM, greatest: CURES_TO }),
    metal: metal('Metal temperature now'),
    sheetLeast: z.optional(metal('The sheet’s least temperature')),
    sheetGreatest: z.optional(metal('The sheet’s greatest temperature')),
    log: z.optional(
      rows(
        'So far',
        z.strictObject({
          hours: measure('Hours', 'h', { above: 0, greatest: 10_000 }),
          celsius: metal('Metal'),
        }),
      ),
    ),
  }),
  reckon({ hours, reference, metal: now, sheetLeast, sheetGreatest, log = [] }): Answer {
    if (sheetLeast !== undefined && now < sheetLeast)
      return refuse(
        fault(
          'metal',
          `Metal at ${now} °C: under the sheet’s ${sheetLeast} °C it does not cure. Warm it.`,
        ),
      )
    if (sheetGreatest !== undefined && now > sheetGreatest)
      return refuse(
        fault(
          'metal',
          `Metal at ${now} °C: the sheet ends at ${sheetGreatest} °C. Only its bake schedule counts.`,
        ),
      )
    if (now < CURES_FROM)
      return refuse(
        fault('metal', `Metal at ${now} °C: under ${CURES_FROM} °C it does not cure. Warm it.`),
      )
    if (now > CURES_TO)
      return refuse(
        fault(
          'metal',
          `Metal at ${now} °C: over ${CURES_TO} °C only the data sheet’s bake schedule counts.`,
        ),
      )
    const done = Math.min(curedShare(log, hours, reference), 1)
    const rest = (1 - done) * hours * cureFactor(now, reference)
    const figures =
      log.length === 0
        ? [
            figure('hours', 'Estimate', rest, 'h', 1),
            figure('least wait', 'As a least wait, at least', Math.max(rest, hours), 'h', 1),
            figure('window', 'As a recoat window, at most', Math.min(rest, hours), 'h', 1),
          ]
        : [
            figure('done', 'Done so far', done * 100, '%', 0),
            figure('hours', 'Further, at this temperature', rest, 'h', 1),
          ]
    return result(figures, {
      working: [
        ...log.map(
          (spell) =>
            `${spell.hours} h at ${spell.celsius} °C: ${spell.celsius < CURES_FROM ? 'too cold, counts nothing' : `${((spell.hours / (hours * cureFactor(spell.celsius, reference))) * 100).toFixed(0)} %`}`,
        ),
        `${(1 - done).toFixed(2)} × ${hours} × 2^((${reference} − ${now}) ÷ 10) = ${rest.toFixed(1)} h`,
      ],
      warnings: [
        'An estimate. Warmth also shortens the recoat window: its far end is never lengthened by this rule.',
      ],
    })
  },
})
