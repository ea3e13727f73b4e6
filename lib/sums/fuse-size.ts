import * as z from 'zod/mini'
import { Decimal } from './decimal.ts'
import { choice, measure } from './fields.ts'
import { ask, defineSum, fault, figure, refuse, result } from './sum.ts'

/** Blade fuses in A: ISO 8820-3:2015 (scope read; ratings from memory). */
const BLADES = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40]
/** Of its rating a fuse carries this share for good; common practice. */
const DERATING = '0.75'
/** A glass fuse that is marked by what blows it carries about half of that (trade note, read). */
const BLOWS_AT = 2

/** A fuse for a steady current; it guards the cable, not the lamp. */
export const fuseSize = defineSum({
  name: 'fuse-size',
  title: 'Fuse for a circuit',
  group: 'electrics',
  formula: 'next rating at or above steady current ÷ 0.75, and not above the cable’s',
  source:
    'ISO 8820-3:2015 blade fuse-links (scope read, ratings from memory); marking of glass fuses: a trade note (read); derating to 75 %: common practice.',
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
    fuse: choice('Fuse', ['blade', 'glass'], { blade: 'blade', glass: 'glass tube' }),
    marked: z.optional(
      choice('Glass is marked by', ['steady current', 'blow current'], {
        'steady current': 'what it carries',
        'blow current': 'what blows it',
      }),
    ),
    rush: choice('Motors or lamps on it', ['yes', 'no'], { yes: 'yes', no: 'no' }),
  }),
  reckon({ amps, watts, volts, cable, fuse, marked, rush }) {
    if (amps === undefined && (watts === undefined || volts === undefined))
      return refuse(fault('amps', 'Steady current: missing. Give it, or the load and its volts.'))
    if (amps !== undefined && watts !== undefined)
      return refuse(
        ask('watts', 'Current and load are both given: which counts?', [
          { words: 'The current', set: { watts: undefined, volts: undefined } },
          { words: 'The load', set: { amps: undefined } },
        ]),
      )
    if (fuse === 'glass' && marked === undefined)
      return refuse(
        ask('marked', 'Glass fuses of older cars are marked in two ways. By which are these?', [
          { words: 'By what they carry', set: { marked: 'steady current' } },
          { words: 'By what blows them', set: { marked: 'blow current' } },
        ]),
      )
    const steady = amps === undefined ? new Decimal(watts ?? 0).div(volts ?? 1) : new Decimal(amps)
    const least = steady.div(DERATING)
    const blade = BLADES.find((size) => steady.lte(new Decimal(size).times(DERATING)))
    if (fuse === 'blade' && blade === undefined)
      return refuse(
        fault('amps', 'Steady current: above what a 40 A fuse may carry. Split the circuit.'),
      )
    // Glass tubes come in many series: what the fuse must carry is the answer, not a size.
    const carries = fuse === 'blade' ? new Decimal(blade ?? 0) : least
    const passes = carries.lte(cable)
    return result(
      [
        fuse === 'blade'
          ? figure('fuse', 'Fuse', carries.toNumber(), 'A', 1)
          : figure(
              'fuse',
              marked === 'blow current' ? 'Fuse, marked at least' : 'Fuse, at least',
              carries.times(marked === 'blow current' ? BLOWS_AT : 1).toNumber(),
              'A',
              1,
            ),
        figure('steady', 'Steady', steady.toNumber(), 'A'),
        figure('least', 'At least', least.toNumber(), 'A'),
      ],
      {
        verdict: {
          passes,
          words: passes ? 'It guards the cable' : 'Fuse above the cable: use a heavier cable',
        },
        working: [`${steady.toFixed(2)} ÷ 0.75 = ${least.toFixed(2)} A`],
        warnings: [
          ...(marked === 'blow current' && fuse === 'glass'
            ? [
                'What blows it is about twice what it carries: never swap the two by the number alone.',
              ]
            : []),
          ...(rush === 'yes' ? ['Motors and lamps rush in: a slow fuse, or a trial.'] : []),
        ],
      },
    )
  },
})
