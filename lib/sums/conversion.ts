import * as z from 'zod/mini'
import { measure, words } from './fields.ts'
import { ask, asTyped, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'
import { convert, isUnit, type UnitSign, units, unitsLike } from './units.ts'

/** Signs that differ by country, and the units that may be meant. */
const BY_COUNTRY: ReadonlyMap<string, readonly UnitSign[]> = new Map([
  ['gal', ['imp gal', 'US gal']],
  ['gallon', ['imp gal', 'US gal']],
  ['pt', ['imp pt', 'US pt']],
  ['pint', ['imp pt', 'US pt']],
  ['qt', ['imp qt', 'US qt']],
  ['quart', ['imp qt', 'US qt']],
  ['fl oz', ['imp fl oz', 'US fl oz']],
  ['ton', ['tonne', 'long ton', 'short ton']],
  ['hp', ['hp', 'metric hp']],
  ['horsepower', ['hp', 'metric hp']],
])

/** How units are typed on a keyboard that has no sign for them. */
const TYPED: ReadonlyMap<string, UnitSign> = new Map([
  ['um', 'µm'],
  ['μm', 'µm'],
  ['C', '°C'],
  ['F', '°F'],
  ['Nm', 'N·m'],
  ['N.m', 'N·m'],
  ['lbf.ft', 'lbf·ft'],
  ['lbf.in', 'lbf·in'],
  ['kgf.m', 'kgf·m'],
  ['kgf/cm2', 'kgf/cm²'],
  ['mm2', 'mm²'],
  ['m2', 'm²'],
  ['PS', 'metric hp'],
])

/** Offered while a unit is typed. */
const SUGGESTED = Object.keys(units)

/** Temperatures end here, in °C. */
const COLDEST = -273.15

/** Any figure in another unit, by exact factors. */
export const conversion = defineSum({
  name: 'convert',
  title: 'A figure in another unit',
  group: 'units',
  formula:
    'figure × exact factor, rounded once, at the end; °F = °C × 9 ÷ 5 + 32, a difference without the 32',
  source:
    'NIST SP 811 appendix B (from memory), factors exact; the imperial gallon by the Weights and Measures Act 1985 (from memory).',
  tolerance: '1e-9 of the figure',
  hazards: [],
  input: z.strictObject({
    value: measure('Figure', '', { least: -1e12, greatest: 1e12 }),
    from: words('From', 'Such as psi, N·m, thou, °F, °C difference.', SUGGESTED),
    to: words('To', 'Such as bar, lbf·ft, µm, °C.', SUGGESTED),
  }),
  reckon({ value, from, to }, meant) {
    const a = unitIn('from', 'From', from, meant('from'))
    const b = unitIn('to', 'To', to, meant('to'))
    if (typeof a !== 'string') return refuse(a)
    if (typeof b !== 'string') return refuse(b)
    if (!unitsLike(a).includes(b))
      return refuse(fault('to', `To: ${b} measures something else. ${a} goes into ${others(a)}.`))
    if (units[a].quantity === 'temperature' && convert(value, a, '°C') < COLDEST)
      return refuse(fault('value', `Figure: nothing is colder than ${COLDEST} °C.`))
    const turned = convert(value, a, b)
    return result([figure('value', 'It is', turned, b, placesFor(turned))], {
      working: [`${value} ${a} = ${turned} ${b}`],
    })
  },
})

function unitIn(field: string, label: string, text: string, meant: boolean): UnitSign | Fault {
  const sign = text.trim()
  const may = BY_COUNTRY.get(sign)
  if (may !== undefined && !meant)
    return ask(
      field,
      `${label}: ${sign} differs by country. Which is meant?`,
      may.map((unit) =>
        unit === sign ? asTyped(field, unit) : { words: unit, set: { [field]: unit } },
      ),
    )
  if (isUnit(sign)) return sign
  return (
    TYPED.get(sign) ??
    fault(
      field,
      `${label}: ${sign} is no unit that is known here: one of ${Object.keys(units).join(', ')}.`,
    )
  )
}

/** So many that five figures are seen, however small it is. */
function placesFor(value: number): number {
  if (value === 0) return 0
  const whole = Math.floor(Math.log10(Math.abs(value)))
  return Math.min(12, Math.max(1, 4 - whole))
}

const others = (sign: UnitSign): string =>
  unitsLike(sign)
    .filter((other) => other !== sign)
    .join(', ')
