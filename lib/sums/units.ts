import { Decimal } from './decimal.ts'

/** What a unit measures; only units of one dimension convert. */
export type Dimension =
  | 'length'
  | 'area'
  | 'volume'
  | 'mass'
  | 'force'
  | 'pressure'
  | 'torque'
  | 'temperature'
  | 'temperature difference'
  | 'speed'
  | 'power'
  | 'spring rate'
  | 'density'
  | 'time'
  | 'angle'
  | 'fuel use'
  | 'share'
  | 'number'
  | 'spreading rate'
  | 'current'
  | 'voltage'
  | 'resistance'
  | 'turning speed'

/** How a unit turns into its dimension's base: (value − less) × times ÷ per; an inverse one is times ÷ per ÷ value. */
interface Way {
  readonly of: Dimension
  readonly times: string
  readonly per?: string
  readonly less?: string
  readonly inverse?: true
}

// Exact by definition: inch, pound, gallon and standard gravity are defined numbers, the others products of them.
// Source: BENCH of the trade after NIST SP 811 appendix B; the UK gallon after the Weights and Measures Act 1985.
const WAYS = {
  µm: { of: 'length', times: '0.001' },
  thou: { of: 'length', times: '0.0254' },
  mil: { of: 'length', times: '0.0254' },
  mm: { of: 'length', times: '1' },
  cm: { of: 'length', times: '10' },
  m: { of: 'length', times: '1000' },
  km: { of: 'length', times: '1000000' },
  in: { of: 'length', times: '25.4' },
  ft: { of: 'length', times: '304.8' },
  mile: { of: 'length', times: '1609344' },
  'mm²': { of: 'area', times: '1' },
  'cm²': { of: 'area', times: '100' },
  'm²': { of: 'area', times: '1000000' },
  'sq in': { of: 'area', times: '645.16' },
  'sq ft': { of: 'area', times: '92903.04' },
  mL: { of: 'volume', times: '1' },
  cc: { of: 'volume', times: '1' },
  L: { of: 'volume', times: '1000' },
  'cu in': { of: 'volume', times: '16.387064' },
  'imp gal': { of: 'volume', times: '4546.09' },
  'imp quart': { of: 'volume', times: '1136.5225' },
  'imp pint': { of: 'volume', times: '568.26125' },
  'imp fl oz': { of: 'volume', times: '28.4130625' },
  'US gal': { of: 'volume', times: '3785.411784' },
  'US quart': { of: 'volume', times: '946.352946' },
  'US pint': { of: 'volume', times: '473.176473' },
  'US fl oz': { of: 'volume', times: '29.5735295625' },
  g: { of: 'mass', times: '1' },
  kg: { of: 'mass', times: '1000' },
  oz: { of: 'mass', times: '28.349523125' },
  lb: { of: 'mass', times: '453.59237' },
  N: { of: 'force', times: '1' },
  kN: { of: 'force', times: '1000' },
  lbf: { of: 'force', times: '4.4482216152605' },
  kgf: { of: 'force', times: '9.80665' },
  Pa: { of: 'pressure', times: '1' },
  kPa: { of: 'pressure', times: '1000' },
  MPa: { of: 'pressure', times: '1000000' },
  bar: { of: 'pressure', times: '100000' },
  psi: { of: 'pressure', times: '4.4482216152605', per: '0.00064516' },
  'kgf/cm²': { of: 'pressure', times: '98066.5' },
  N·m: { of: 'torque', times: '1' },
  lbf·ft: { of: 'torque', times: '1.3558179483314004' },
  lbf·in: { of: 'torque', times: '1.3558179483314004', per: '12' },
  kgf·m: { of: 'torque', times: '9.80665' },
  '°C': { of: 'temperature', times: '1' },
  '°F': { of: 'temperature', less: '32', times: '5', per: '9' },
  'Δ°C': { of: 'temperature difference', times: '1' },
  'Δ°F': { of: 'temperature difference', times: '5', per: '9' },
  'km/h': { of: 'speed', times: '1' },
  mph: { of: 'speed', times: '1.609344' },
  W: { of: 'power', times: '1' },
  kW: { of: 'power', times: '1000' },
  hp: { of: 'power', times: '745.69987158227022' },
  'metric hp': { of: 'power', times: '735.49875' },
  'N/mm': { of: 'spring rate', times: '1' },
  'lbf/in': { of: 'spring rate', times: '4.4482216152605', per: '25.4' },
  'g/mL': { of: 'density', times: '1' },
  'kg/L': { of: 'density', times: '1' },
  'kg/m³': { of: 'density', times: '0.001' },
  s: { of: 'time', times: '1' },
  min: { of: 'time', times: '60' },
  h: { of: 'time', times: '3600' },
  d: { of: 'time', times: '86400' },
  '°': { of: 'angle', times: '1' },
  '′': { of: 'angle', times: '1', per: '60' },
  'L/100 km': { of: 'fuel use', times: '1' },
  'mpg imp': { of: 'fuel use', times: '454.609', per: '1.609344', inverse: true },
  'mpg US': { of: 'fuel use', times: '378.5411784', per: '1.609344', inverse: true },
  '%': { of: 'share', times: '1' },
  '': { of: 'number', times: '1' },
  'm²/L': { of: 'spreading rate', times: '1' },
  A: { of: 'current', times: '1' },
  V: { of: 'voltage', times: '1' },
  Ω: { of: 'resistance', times: '1' },
  rpm: { of: 'turning speed', times: '1' },
} satisfies Readonly<Record<string, Way>>

/** A unit that the sums know; `''` is a bare number, `Δ°C` a difference of temperatures. */
export type Unit = keyof typeof WAYS

/** Each unit, in the order of the table. */
export const UNITS: readonly Unit[] = Object.keys(WAYS).filter(isUnit)

/** Whether a text names a unit exactly as it is written here. */
export function isUnit(text: string): text is Unit {
  return Object.hasOwn(WAYS, text)
}

/** What a unit measures. */
export const dimensionOf = (unit: Unit): Dimension => WAYS[unit].of

/** All units that measure the same, the unit itself among them. */
export const unitsLike = (unit: Unit): readonly Unit[] =>
  UNITS.filter((other) => dimensionOf(other) === dimensionOf(unit))

/** A unit as it is printed: a difference of temperatures in plain degrees. */
export const unitShown = (unit: Unit): string => unit.replace('Δ', '')

/**
 * The same quantity in another unit, by exact factors, rounded nowhere but to the nearest number a computer holds.
 * @throws RangeError where the two don't measure the same
 */
export function convert(value: number, from: Unit, to: Unit): number {
  return from === to ? value : converted(value, from, to).toNumber()
}

/** As `convert`, kept to forty places. */
export function converted(value: Decimal | number, from: Unit, to: Unit): Decimal {
  const here: Way = WAYS[from]
  const there: Way = WAYS[to]
  if (here.of !== there.of)
    throw new RangeError(`${from} measures ${here.of}, ${to} ${there.of}: they don't convert`)
  const given = new Decimal(value)
  if (from === to) return given
  if (here.inverse || there.inverse) return outOfBase(intoBase(given, here), there)
  // One division at the end: a factor that doesn't end (5/9, psi) then costs no place.
  return given
    .minus(here.less ?? 0)
    .times(here.times)
    .times(there.per ?? 1)
    .div(new Decimal(here.per ?? 1).times(there.times))
    .plus(there.less ?? 0)
}

const intoBase = (value: Decimal, way: Way): Decimal =>
  way.inverse
    ? new Decimal(way.times).div(new Decimal(way.per ?? 1).times(value))
    : value.times(way.times).div(way.per ?? 1)

const outOfBase = (base: Decimal, way: Way): Decimal =>
  way.inverse
    ? new Decimal(way.times).div(new Decimal(way.per ?? 1).times(base))
    : base.times(way.per ?? 1).div(way.times)
