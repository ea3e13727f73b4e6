import * as z from 'zod/mini'
import { choice, measure, words } from './fields.ts'
import { type Answer, ask, defineSum, fault, figure, refuse, result } from './sum.ts'
import { convert, isUnit, type UnitSign, units, unitsLike } from './units.ts'

/** Signs that differ by country, and what may be meant. */
const BY_COUNTRY: ReadonlyMap<string, string> = new Map([
  ['gal', 'imp gal or US gal'],
  ['gallon', 'imp gal or US gal'],
  ['pt', 'imp pt or US pt'],
  ['pint', 'imp pt or US pt'],
  ['qt', 'imp qt or US qt'],
  ['fl oz', 'imp fl oz or US fl oz'],
  ['ton', 'the long ton, the short ton or the tonne, in kg'],
  ['PS', 'metric hp'],
])

function unitIn(field: string, label: string, text: string) {
  const sign = text.trim()
  if (isUnit(sign)) return { sign }
  const meant = BY_COUNTRY.get(sign)
  return meant === undefined
    ? fault(
        field,
        `${label}: ${text} is no unit that is known here: one of ${Object.keys(units).join(', ')}.`,
      )
    : ask(field, `${label}: ${text} differs by country. Is ${meant} meant?`)
}

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
    from: words('From', 'Such as psi, N·m, thou, °F.', Object.keys(units)),
    to: words('To', '', Object.keys(units)),
  }),
  reckon({ value, from, to }): Answer {
    const [a, b] = [unitIn('from', 'From', from), unitIn('to', 'To', to)]
    if ('field' in a) return refuse(a)
    if ('field' in b) return refuse(b)
    if (!unitsLike(a.sign).includes(b.sign))
      return refuse(
        fault(
          'to',
          `To: ${b.sign} measures something else. ${a.sign} goes into ${others(a.sign)}.`,
        ),
      )
    return result([figure('value', 'It is', convert(value, a.sign, b.sign), b.sign, 4)])
  },
})

const others = (sign: UnitSign): string =>
  unitsLike(sign)
    .filter((other) => other !== sign)
    .join(', ')

const IMPERIAL = 282.480936
const US = 235.214583

/** Fuel used, between miles a gallon and litres for 100 km. */
export const fuelUse = defineSum({
  name: 'fuel-use',
  title: 'Fuel used',
  group: 'units',
  formula: 'L/100 km = 282.480936 ÷ mpg (imperial), 235.214583 ÷ mpg (US); and back by the same',
  source: 'Exact gallons and mile.',
  tolerance: '0.01',
  hazards: [],
  input: z.strictObject({
    value: measure('Figure', '', { above: 0, greatest: 1000 }),
    in: choice('In', ['mpg imp', 'mpg US', 'L/100 km'], {
      'mpg imp': 'miles an imperial gallon',
      'mpg US': 'miles a US gallon',
      'L/100 km': 'litres for 100 km',
    }),
  }),
  reckon({ value, in: from }) {
    const litres = from === 'L/100 km' ? value : (from === 'mpg imp' ? IMPERIAL : US) / value
    return result([
      figure('L/100 km', 'Litres for 100 km', litres, 'L'),
      figure('mpg imp', 'Miles an imperial gallon', IMPERIAL / litres, '', 1),
      figure('mpg US', 'Miles a US gallon', US / litres, '', 1),
    ])
  },
})
