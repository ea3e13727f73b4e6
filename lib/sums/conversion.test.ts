import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy } from '../../test/worked-sum.ts'
import { conversion } from './conversion.ts'
import { fuelUse } from './fuel-use.ts'

const of = (value: number, from: string, to: string) => ({ value, from, to })

describe('a figure in another unit', () => {
  // NIST SP 811 appendix B and the Weights and Measures Act 1985: from memory.
  it.each([
    [3.268, 'in', 'mm', '83.007'],
    [0.0015, 'in', 'µm', '38.100'],
    [55, 'psi', 'bar', '3.7921'],
    [7.5, 'imp pt', 'L', '4.2620'],
    [7.5, 'US pt', 'L', '3.5488'],
    [68, '°F', '°C', '20.000'],
    [3, '°C difference', '°F difference', '5.4000'],
    [5, '°F difference', '°C difference', '2.7778'],
    [1, 'Pa', 'psi', '0.00014504'],
    [0, 'mm', 'in', '0'],
  ])('%s %s in %s', (value, from, to, shown) => {
    expect(shownBy(conversion, of(value, from, to))).toEqual({ value: shown })
  })

  it('may be typed without its signs', () => {
    expect(valueBy(conversion, of(1, 'lbf.ft', 'Nm'), 'value')).toBeCloseTo(1.3558179483314, 12)
    expect(shownBy(conversion, of(68, 'F', 'C'))).toEqual({ value: '20.000' })
  })

  it.each([
    ['gallon', 'L', ['4.5461', '3.7854']],
    ['pint', 'mL', ['568.26', '473.18']],
    ['fl oz', 'mL', ['28.413', '29.574']],
    ['ton', 'kg', ['1000.0', '1016.0', '907.18']],
    ['hp', 'W', ['745.70', '735.50']],
  ])('of a %s asks of which country', (from, to, shown) => {
    const asked = askedAbout(conversion, of(1, from, to))
    expect(asked?.field).toBe('from')
    expect(asked?.next.map((next) => shownBy(conversion, next).value)).toEqual(shown)
  })

  it('is refused between things that don’t convert, of no unit and under −273.15 °C', () => {
    expect(refusedFor(conversion, of(1, 'psi', 'm'))).toEqual(['to'])
    expect(refusedFor(conversion, of(1, '°C', '°F difference'))).toEqual(['to'])
    expect(refusedFor(conversion, of(1, 'furlong', 'm'))).toEqual(['from'])
    expect(refusedFor(conversion, of(1, 'toString', 'm'))).toEqual(['from'])
    expect(refusedFor(conversion, of(-500, '°F', '°C'))).toEqual(['value'])
  })
})

describe('fuel used', () => {
  it('at 30 miles an imperial gallon is 9.42 L for 100 km', () => {
    expect(shownBy(fuelUse, { value: 30, in: 'mpg imp' })).toMatchObject({ 'L/100 km': '9.42' })
  })

  it('goes by 282.480936 and 235.214583', () => {
    expect(valueBy(fuelUse, { value: 1, in: 'mpg imp' }, 'L/100 km')).toBeCloseTo(282.480936, 6)
    expect(valueBy(fuelUse, { value: 1, in: 'mpg US' }, 'L/100 km')).toBeCloseTo(235.214583, 6)
    expect(refusedFor(fuelUse, { value: 0, in: 'mpg US' })).toEqual(['value'])
  })
})
