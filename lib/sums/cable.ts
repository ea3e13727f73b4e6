import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { choice, measure } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'

/** Greatest resistance at 20 °C in Ω/km by section in mm², flexible class 5, plain copper: IEC 60228 (table read). */
export const OHM_PER_KM: ReadonlyMap<string, number> = new Map([
  ['0.5', 39],
  ['0.75', 26],
  ['1', 19.5],
  ['1.5', 13.3],
  ['2.5', 7.98],
  ['4', 4.95],
  ['6', 3.3],
  ['10', 1.91],
  ['16', 1.21],
  ['25', 0.78],
  ['35', 0.554],
  ['50', 0.386],
])
/** Copper's resistance grows by this share for each °C (IEC 60028, from memory). */
const ALPHA = 0.00393
const SOURCE =
  'IEC 60228 greatest resistances, flexible class 5, plain copper (table read); α 0.00393/K (IEC 60028, from memory). Road-vehicle cable by ISO 6722-1 is slightly better (from memory), so this is the safe side.'
const LIMITS = 'Usual limits: lamps 0.3 to 0.5 V, charging 0.3 V, starter 0.5 V (common practice).'

const shared = {
  amps: measure('Current', 'A', { above: 0, greatest: 1000 }),
  length: measure('Length, one way', 'm', { above: 0, greatest: 30 }),
  ways: choice('Return', ['body', 'wire'], {
    body: 'through the body',
    wire: 'by a wire of its own',
  }),
  celsius: measure('Cable at', '°C', {
    least: -40,
    greatest: 105,
    help: '60 to 80 in the engine bay; not 20.',
  }),
  system: measure('System', 'V', { least: 6, greatest: 48 }),
}

/** Volts lost in a cable. */
export const dropOf = (
  amps: number,
  length: number,
  ways: 1 | 2,
  ohms: number,
  celsius: number,
): number => ((amps * length * ways * ohms) / 1000) * (1 + ALPHA * (celsius - 20))

const earth = (ways: string): string[] =>
  ways === 'body' ? ['Add the drop of the earth path, measured.'] : []

/** Voltage drop along a cable. */
export const cableDrop = defineSum({
  name: 'cable-drop',
  title: 'Voltage drop along a cable',
  group: 'electrics',
  formula: 'drop = I × length × ways × R20 ÷ 1000 × (1 + 0.00393 × (T − 20))',
  source: SOURCE,
  tolerance: '0.5 %',
  hazards: ['battery'],
  input: z.strictObject({
    ...shared,
    section: measure('Section', 'mm²', { above: 0, greatest: 50 }),
  }),
  reckon({ amps, length, ways, celsius, system, section }): Answer {
    const ohms = OHM_PER_KM.get(String(section))
    if (ohms === undefined)
      return refuse(fault('section', `Section: one of ${[...OHM_PER_KM.keys()].join(', ')} mm².`))
    const drop = dropOf(amps, length, ways === 'body' ? 1 : 2, ohms, celsius)
    return result(
      [
        figure('drop', 'Drop', drop, 'V', 3),
        figure('percent', 'Of the system', (drop / system) * 100, '%'),
      ],
      {
        working: [
          `${amps} × ${length} × ${ways === 'body' ? 1 : 2} × ${ohms} ÷ 1000 × ${(1 + ALPHA * (celsius - 20)).toFixed(4)} = ${drop.toFixed(3)} V`,
        ],
        warnings: [LIMITS, ...earth(ways)],
      },
    )
  },
})

/** The smallest section within a drop; its current rating is the cable's own sheet's. */
export const cableSize = defineSum({
  name: 'cable-size',
  title: 'Cable section for a drop',
  group: 'electrics',
  formula: 'smallest section whose drop is within the limit',
  source: SOURCE,
  tolerance: '0.5 %',
  hazards: ['battery'],
  input: z.strictObject({
    ...shared,
    limit: measure('Drop allowed', 'V', { above: 0, greatest: 5 }),
  }),
  reckon({ amps, length, ways, celsius, limit }): Answer {
    for (const [section, ohms] of OHM_PER_KM) {
      const drop = dropOf(amps, length, ways === 'body' ? 1 : 2, ohms, celsius)
      if (drop > limit) continue
      return result(
        [
          figure('section', 'Section', Number(section), 'mm²', 2),
          figure('drop', 'Its drop', drop, 'V', 3),
        ],
        {
          warnings: [
            'Its current rating, from the cable’s own sheet, must be enough too.',
            ...earth(ways),
          ],
        },
      )
    }
    return refuse(
      fault(
        'limit',
        'Drop allowed: not even 50 mm² keeps within it. Shorten the run or use two cables.',
      ),
    )
  },
})

/** Blade fuses in A: ISO 8820-3:2015 (scope read; ratings from memory). */
const FUSES = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40]

/** A fuse for a steady current; it guards the cable, not the lamp. */
export const fuseSize = defineSum({
  name: 'fuse-size',
  title: 'Fuse for a circuit',
  group: 'electrics',
  formula: 'next rating at or above steady current ÷ 0.75, and not above the cable’s',
  source:
    'ISO 8820-3:2015 blade fuse-links (scope read, ratings from memory); derating to 75 %: common practice.',
  tolerance: 'Exact',
  hazards: ['battery'],
  input: z.strictObject({
    amps: z.optional(measure('Steady current', 'A', { above: 0, greatest: 100 })),
    watts: z.optional(measure('Or the load', 'W', { above: 0, greatest: 2000 })),
    volts: z.optional(
      measure('At', 'V', { above: 0, greatest: 60, help: '13.5 charging, in a 12 V car.' }),
    ),
    cable: measure('The cable is good for', 'A', {
      above: 0,
      greatest: 500,
      help: 'From its own sheet.',
    }),
    marking: choice(
      'Fuses here are',
      ['blade', 'glass, by steady current', 'glass, by blow current'],
      {
        blade: 'Blade',
        'glass, by steady current': 'Glass, marked by steady current',
        'glass, by blow current': 'Glass, marked by the current that blows it',
      },
    ),
  }),
  reckon({ amps, watts, volts, cable, marking }): Answer {
    if (amps === undefined && (watts === undefined || volts === undefined))
      return refuse(fault('amps', 'Steady current: missing. Give it, or the load and its volts.'))
    if (amps !== undefined && watts !== undefined)
      return refuse(
        ask('watts', 'Current and load are both given: which counts? Leave the other empty.'),
      )
    const steady = amps === undefined ? new Decimal(watts ?? 0).div(volts ?? 1) : new Decimal(amps)
    const least = steady.div('0.75')
    const rating = FUSES.find((size) => least.lte(size))
    if (rating === undefined)
      return refuse(
        fault('amps', 'Steady current: above what a 40 A fuse may carry. Split the circuit.'),
      )
    const passes = rating <= cable
    return result(
      [
        figure('steady', 'Steady', steady.toNumber(), 'A'),
        figure('least', 'At least', least.toNumber(), 'A'),
        figure('fuse', 'Fuse', rating, 'A', 1),
      ],
      {
        verdict: {
          passes,
          words: passes ? 'It guards the cable' : 'Fuse above the cable: use a heavier cable',
        },
        working: [`${steady.toFixed(2)} ÷ 0.75 = ${least.toFixed(2)} A`],
        warnings: [
          ...(marking === 'glass, by blow current'
            ? [
                'Marked by blow current, about twice the steady one: never swap them by the number alone.',
              ]
            : []),
          'Motors and lamps rush in: a slow fuse, or a trial.',
        ],
      },
    )
  },
})
