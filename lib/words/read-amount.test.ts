import { describe, expect, it } from 'vitest'
import { readAmount, readQuantity, readTaxRate, typedAmount } from './read-amount.ts'

describe('readAmount', () => {
  it.each([
    ['340', 34000],
    ['340.5', 34050],
    ['£1,234.50', 123450],
    ['1.234,50 €', 123450],
    ["12'345.00", 1234500],
    ['1 234,5', 123450],
    ['−95', -9500],
    ['-0.01', -1],
    ['1,234', 123400],
    ['1.234.567', 123456700],
    ['.50', 50],
    ['-0', 0],
  ])('reads %s', (typed, minor) => {
    expect(readAmount(typed, 'GBP')).toBe(minor)
  })

  it.each(['', 'about fifty', '1.2.3', '12.345,678', '1,23,456', '--4', '12.34.567,8'])(
    'takes %s for no sum',
    (typed) => {
      expect(readAmount(typed, 'GBP')).toBeNull()
    },
  )

  it('knows a currency without pence', () => {
    expect(readAmount('1,500', 'JPY')).toBe(1500)
    expect(readAmount('1.5', 'JPY')).toBeNull()
  })
})

describe('readQuantity', () => {
  it('takes point and comma for the decimal mark', () => {
    expect(readQuantity('5.5')).toBe(5.5)
    expect(readQuantity(' 0,1255 ')).toBe(0.1255)
    expect(readQuantity('-2')).toBe(-2)
  })

  it('takes words for no quantity', () => {
    expect(readQuantity('a pair')).toBeNull()
    expect(readQuantity('')).toBeNull()
  })
})

describe('readTaxRate', () => {
  it('reads per cent in hundredths, up to the whole price', () => {
    expect(readTaxRate('20 %')).toBe(2000)
    expect(readTaxRate('5,5')).toBe(550)
    expect(readTaxRate('101')).toBeNull()
    expect(readTaxRate('-1')).toBeNull()
  })
})

describe('typedAmount', () => {
  it('gives back what was typed', () => {
    expect(typedAmount(123450, 'GBP')).toBe('1234.50')
    expect(typedAmount(-5, 'GBP')).toBe('-0.05')
    expect(typedAmount(1500, 'JPY')).toBe('1500')
  })
})
