import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { rounded } from './decimal.ts'
import { convert, UNITS, type Unit, unitsLike } from './units.ts'

describe('units convert by exact factors', () => {
  // y1–y8: the table of exact factors, NIST SP 811 appendix B; UK gallon, Weights and Measures Act 1985.
  it.each<[number, Unit, number, Unit, string]>([
    [3.268, 'in', 3, 'mm', '83.007'],
    [0.0015, 'in', 1, 'µm', '38.1'],
    [55, 'psi', 3, 'bar', '3.792'],
    [7.5, 'imp pint', 3, 'L', '4.262'],
    [7.5, 'US pint', 3, 'L', '3.549'],
    [68, '°F', 1, '°C', '20.0'],
    [3, 'Δ°C', 1, 'Δ°F', '5.4'],
    [30, 'mpg imp', 2, 'L/100 km', '9.42'],
    // l1, l2: the torque of a head bolt. m4: an oil gauge in bar.
    [65, 'lbf·ft', 2, 'N·m', '88.13'],
    [110, 'N·m', 2, 'lbf·ft', '81.13'],
    [6.5, 'bar', 1, 'psi', '94.3'],
    // s1: a spring's rate.
    [22.79, 'N/mm', 1, 'lbf/in', '130.1'],
  ])('%s %s', (value, from, places, to, expected) => {
    expect(rounded(convert(value, from, to), places)).toBe(expected)
  })

  it.each<[Unit, Unit, number]>([
    ['in', 'mm', 25.4],
    ['thou', 'µm', 25.4],
    ['mil', 'µm', 25.4],
    ['ft', 'mm', 304.8],
    ['mile', 'm', 1609.344],
    ['lb', 'kg', 0.45359237],
    ['oz', 'g', 28.349523125],
    ['lbf', 'N', 4.4482216152605],
    ['bar', 'kPa', 100],
    ['kgf/cm²', 'Pa', 98_066.5],
    ['imp gal', 'L', 4.54609],
    ['US gal', 'L', 3.785411784],
    ['imp pint', 'mL', 568.26125],
    ['US quart', 'mL', 946.352946],
    ['imp fl oz', 'mL', 28.4130625],
    ['US fl oz', 'mL', 29.5735295625],
    ['cu in', 'cc', 16.387064],
    ['sq ft', 'm²', 0.09290304],
    ['metric hp', 'W', 735.49875],
    ['hp', 'W', 745.6998715822702],
    ['lbf·ft', 'N·m', 1.3558179483314003],
    ['kgf·m', 'N·m', 9.80665],
    // 0.45359237 × 9.80665 ÷ 0.0254², kept as it is and not as the 6.89476 kPa of some tables.
    ['psi', 'Pa', 6894.757293168362],
    ['lbf/in', 'N/mm', 0.17512683524647638],
  ])('one %s in %s is %s exactly', (from, to, factor) => {
    expect(convert(1, from, to)).toBe(factor)
  })

  it('keeps a temperature apart from a difference of temperatures', () => {
    expect(convert(3, '°C', '°F')).toBe(37.4)
    expect(convert(3, 'Δ°C', 'Δ°F')).toBe(5.4)
    expect(() => convert(3, '°C', 'Δ°F')).toThrow("they don't convert")
  })

  it('comes back to what was entered, there and back', () => {
    const pair = fc
      .constantFrom(...UNITS)
      .chain((from) => fc.tuple(fc.constant(from), fc.constantFrom(...unitsLike(from))))
    fc.assert(
      fc.property(pair, fc.integer({ min: 1, max: 1_000_000 }), ([from, to], tenths) => {
        const value = tenths / 10
        expect(convert(convert(value, from, to), to, from)).toBeCloseTo(value, 8)
      }),
    )
  })
})

describe('a figure is written half away from zero', () => {
  it.each([
    [0.25, 1, '0.3'],
    [-0.25, 1, '-0.3'],
    [1.005, 2, '1.01'],
    [-0.04, 1, '0.0'],
    [54.05, 1, '54.1'],
  ])('%s at %s places is %s', (value, places, expected) => {
    expect(rounded(value, places)).toBe(expected)
  })
})
