import { Decimal } from './decimal.ts'
import { choice, measure } from './fields.ts'

/** Sections of cable in mm², as they are printed. */
export const SECTIONS = [
  '0.5',
  '0.75',
  '1',
  '1.5',
  '2.5',
  '4',
  '6',
  '10',
  '16',
  '25',
  '35',
  '50',
] as const
type Section = (typeof SECTIONS)[number]

/** Greatest resistance at 20 °C in Ω/km, flexible class 5, plain copper: IEC 60228 (table read). */
export const OHM_PER_KM: { readonly [S in Section]: string } = {
  '0.5': '39',
  '0.75': '26',
  '1': '19.5',
  '1.5': '13.3',
  '2.5': '7.98',
  '4': '4.95',
  '6': '3.3',
  '10': '1.91',
  '16': '1.21',
  '25': '0.78',
  '35': '0.554',
  '50': '0.386',
}
/** Copper's resistance grows by this share for each °C (IEC 60028, from memory). */
const ALPHA = '0.00393'

/** Where the figures of a cable are from. */
export const CABLE_SOURCE =
  'IEC 60228 greatest resistances, flexible class 5, plain copper (table read); α 0.00393/K (IEC 60028, from memory). Road-vehicle cable by ISO 6722-1 is slightly better (from memory), so this is the safe side.'
/** The habits of the trade, where no limit is agreed. */
export const USUAL_DROPS =
  'Usual limits: lamps 0.3 to 0.5 V, charging 0.3 V, starter 0.5 V (common practice).'

/** What every cable is asked. */
export const cableFields = {
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
}

interface Run {
  readonly amps: number
  readonly length: number
  readonly ways: 'body' | 'wire'
  readonly celsius: number
}

/** Volts lost along a run of that section. */
export function dropOf({ amps, length, ways, celsius }: Run, section: Section): Decimal {
  return new Decimal(amps)
    .times(length)
    .times(ways === 'body' ? 1 : 2)
    .times(OHM_PER_KM[section])
    .div(1000)
    .times(warmth(celsius))
}

/** How much more resistance copper has at that temperature than at 20 °C. */
export const warmth = (celsius: number): Decimal =>
  new Decimal(celsius).minus(20).times(ALPHA).plus(1)
