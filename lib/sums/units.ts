import { Decimal } from './decimal.ts'

// Exact by definition where not marked. Sources: NIST SP 811 appendix B and the Weights and Measures Act 1985 (imperial gallon), both from
// memory; every product is held against mathjs in units.test.ts.

/** What a unit measures: only units of one kind convert into each other. */
export type Quantity =
  | 'length'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'torque'
  | 'volume'
  | 'area'
  | 'power'
  | 'temperature'
  | 'temperature difference'
  | 'speed'
  | 'spring rate'
  | 'angle'

interface Unit {
  readonly quantity: Quantity
  /** How much of the base unit one is: m, kg, N, Pa, N·m, m³, m², W, °C, °C, m/s, N/m, °. */
  readonly factor: Decimal
  /** Where its zero lies in the base unit; only of temperatures. */
  readonly zero: Decimal
}

const pound = new Decimal('0.45359237')
const gravity = new Decimal('9.80665')
const inch = new Decimal('0.0254')
const foot = new Decimal('0.3048')
const poundForce = pound.times(gravity)
const gallon = new Decimal('0.00454609')
const usGallon = new Decimal('0.003785411784')
const nought = new Decimal(0)
const fifth = new Decimal(5).div(9)

const of = (quantity: Quantity, factor: Decimal | string, zero: Decimal = nought): Unit => ({
  quantity,
  factor: new Decimal(factor),
  zero,
})

/** Every unit by the sign that it is written with. A bare gallon, pint, ton or hp isn't one: they differ by country. */
export const units = {
  mm: of('length', '0.001'),
  cm: of('length', '0.01'),
  m: of('length', '1'),
  km: of('length', '1000'),
  µm: of('length', '0.000001'),
  thou: of('length', inch.div(1000)),
  mil: of('length', inch.div(1000)),
  in: of('length', inch),
  ft: of('length', foot),
  mile: of('length', '1609.344'),
  g: of('mass', '0.001'),
  kg: of('mass', '1'),
  oz: of('mass', pound.div(16)),
  lb: of('mass', pound),
  tonne: of('mass', '1000'),
  'long ton': of('mass', pound.times(2240)),
  'short ton': of('mass', pound.times(2000)),
  N: of('force', '1'),
  kN: of('force', '1000'),
  lbf: of('force', poundForce),
  kgf: of('force', gravity),
  Pa: of('pressure', '1'),
  kPa: of('pressure', '1000'),
  MPa: of('pressure', '1000000'),
  bar: of('pressure', '100000'),
  mbar: of('pressure', '100'),
  psi: of('pressure', poundForce.div(inch.times(inch))),
  'kgf/cm²': of('pressure', '98066.5'),
  N·m: of('torque', '1'),
  lbf·ft: of('torque', poundForce.times(foot)),
  lbf·in: of('torque', poundForce.times(inch)),
  kgf·m: of('torque', gravity),
  mL: of('volume', '0.000001'),
  cc: of('volume', '0.000001'),
  L: of('volume', '0.001'),
  'cu in': of('volume', inch.times(inch).times(inch)),
  'imp gal': of('volume', gallon),
  'imp qt': of('volume', gallon.div(4)),
  'imp pt': of('volume', gallon.div(8)),
  'imp fl oz': of('volume', gallon.div(160)),
  'US gal': of('volume', usGallon),
  'US qt': of('volume', usGallon.div(4)),
  'US pt': of('volume', usGallon.div(8)),
  'US fl oz': of('volume', usGallon.div(128)),
  'mm²': of('area', '0.000001'),
  'm²': of('area', '1'),
  'sq ft': of('area', foot.times(foot)),
  W: of('power', '1'),
  kW: of('power', '1000'),
  hp: of('power', poundForce.times(foot).times(550)),
  'metric hp': of('power', gravity.times(75)),
  '°C': of('temperature', '1'),
  '°F': of('temperature', fifth, new Decimal(-160).div(9)),
  K: of('temperature', '1', new Decimal('-273.15')),
  '°C difference': of('temperature difference', '1'),
  '°F difference': of('temperature difference', fifth),
  'km/h': of('speed', new Decimal(1).div('3.6')),
  mph: of('speed', '0.44704'),
  'N/mm': of('spring rate', '1000'),
  'lbf/in': of('spring rate', poundForce.div(inch)),
  '°': of('angle', '1'),
  '′': of('angle', new Decimal(1).div(60)),
  flats: of('angle', '60'),
} as const satisfies { readonly [sign: string]: Unit }

/** The sign of a unit. */
export type UnitSign = keyof typeof units

/** Tells whether there is a unit of that sign. */
export const isUnit = (sign: string): sign is UnitSign => Object.hasOwn(units, sign)

/** Signs of the units that measure what that one does, itself among them. */
export const unitsLike = (sign: UnitSign): readonly UnitSign[] =>
  Object.keys(units)
    .filter(isUnit)
    .filter((other) => units[other].quantity === units[sign].quantity)

/**
 * A figure in another unit of the same quantity, by exact factors and one rounding at the end.
 * @throws Error where the two measure different things: whoever calls has asked `unitsLike`
 */
export function convert(value: number, from: UnitSign, to: UnitSign): number {
  const [a, b]: readonly Unit[] = [units[from], units[to]]
  if (a === undefined || b === undefined || a.quantity !== b.quantity)
    throw new Error(`${from} and ${to} measure different things.`)
  if (from === to) return value
  return new Decimal(value).times(a.factor).plus(a.zero).minus(b.zero).div(b.factor).toNumber()
}
