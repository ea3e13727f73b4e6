import fc from 'fast-check'
import { unit } from 'mathjs'
import { describe, expect, test } from 'vitest'
import { convert, isUnit, type UnitSign, units, unitsLike } from './units.ts'

/** The same units in the reference library's names. */
const reference: readonly (readonly [UnitSign, UnitSign, string, string])[] = [
  ['in', 'mm', 'in', 'mm'],
  ['ft', 'm', 'ft', 'm'],
  ['mile', 'm', 'mi', 'm'],
  ['thou', 'µm', 'mil', 'um'],
  ['lb', 'kg', 'lbm', 'kg'],
  ['oz', 'g', 'oz', 'g'],
  ['lbf', 'N', 'lbf', 'N'],
  ['psi', 'kPa', 'lbf/in^2', 'kPa'],
  ['psi', 'bar', 'lbf/in^2', 'bar'],
  ['lbf·ft', 'N·m', 'lbf ft', 'N m'],
  ['lbf·in', 'N·m', 'lbf in', 'N m'],
  ['cu in', 'cc', 'in^3', 'cm^3'],
  ['sq ft', 'm²', 'ft^2', 'm^2'],
  ['mph', 'km/h', 'mi/hour', 'km/hour'],
  ['lbf/in', 'N/mm', 'lbf/in', 'N/mm'],
  ['US gal', 'L', 'gallon', 'L'],
]

describe('against mathjs', () => {
  test.each(reference)('%s in %s', (from, to, theirs, theirsTo) => {
    const expected = unit(1, theirs).toNumber(theirsTo)
    expect(convert(1, from, to) / expected).toBeCloseTo(1, 9)
  })
})

describe('exact factors', () => {
  // NIST SP 811 appendix B and the Weights and Measures Act 1985: from memory.
  test.each([
    [3.268, 'in', 'mm', 83.0072],
    [0.0015, 'in', 'µm', 38.1],
    [7.5, 'imp pt', 'L', 4.261959375],
    [7.5, 'US pt', 'L', 3.5488235475],
    [1, 'imp gal', 'L', 4.54609],
    [1, 'US gal', 'L', 3.785411784],
    [1, 'imp fl oz', 'mL', 28.4130625],
    [1, 'US fl oz', 'mL', 29.5735295625],
    [68, '°F', '°C', 20],
    [3, '°C difference', '°F difference', 5.4],
    [1, 'kgf/cm²', 'Pa', 98_066.5],
    [1, 'metric hp', 'W', 735.49875],
    [1, 'hp', 'W', 745.6998715822702],
    [1, 'lbf·ft', 'N·m', 1.3558179483314],
    [1, 'lbf/in', 'N/mm', 4.4482216152605 / 25.4],
    [1, 'long ton', 'kg', 1016.0469088],
    [1, 'short ton', 'kg', 907.18474],
    [1, 'tonne', 'kg', 1000],
    [1.5, 'flats', '°', 90],
    [30, '′', '°', 0.5],
    [1, 'psi', 'Pa', 6894.757293168361],
  ] as const)('%s %s is %s %s', (value, from, to, expected) => {
    expect(convert(value, from, to) / expected).toBeCloseTo(1, 12)
  })

  test('55 psi is 3.792 bar', () => {
    expect(convert(55, 'psi', 'bar')).toBeCloseTo(3.792, 3)
  })
})

test('there and back is where it began, between any two units of one kind', () => {
  const signs = Object.keys(units).filter(isUnit)
  fc.assert(
    fc.property(
      fc.constantFrom(...signs),
      fc.nat(),
      fc.double({ min: 0.001, max: 1e6, noNaN: true }),
      (from, pick, value) => {
        const like = unitsLike(from)
        const to = like[pick % like.length] ?? from
        expect(convert(convert(value, from, to), to, from) / value).toBeCloseTo(1, 9)
      },
    ),
  )
})
