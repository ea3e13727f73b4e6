import { describe, expect, it } from 'vitest'
import { Minor } from '../record/scalars.ts'
import { counted, hours, limits, money, moneyChange, perCent, reading, taxRate } from './money.ts'

const minor = (value: number) => Minor.parse(value)

describe('figures', () => {
  it('always shows the pence, and a true minus', () => {
    expect(money(minor(1_421_280), 'GBP', 'en-GB')).toBe('£14,212.80')
    expect(money(minor(-9_500), 'GBP', 'en-GB')).toBe('−£95.00')
    expect(moneyChange(minor(76_080), 'GBP', 'en-GB')).toBe('+£760.80')
  })

  it('follows the currency’s own minor units', () => {
    expect(money(minor(1_500), 'JPY', 'en-GB')).toBe('JP¥1,500')
    expect(money(minor(1_234_500), 'KWD', 'en-GB')).toMatch(/1,234\.500/)
  })

  it('writes a share with one place and a space', () => {
    expect(perCent(0.103, 'en-GB')).toBe('10.3 %')
    expect(perCent(-0.02, 'en-GB')).toBe('−2.0 %')
    expect(taxRate(2000, 'en-GB')).toBe('20 %')
  })

  it('writes readings and limits in words', () => {
    expect(reading(3.9, 'bar', 'en-GB')).toBe('3.9 bar')
    expect(reading(3.9, 'bar', 'de-DE')).toBe('3,9 bar')
    expect(limits({ least: 3.1, greatest: 4.5, unit: 'bar' }, 'en-GB')).toBe(
      'limits 3.1 to 4.5 bar',
    )
    expect(limits({ least: null, greatest: 0.1, unit: 'mm' }, 'en-GB')).toBe('at most 0.1 mm')
    expect(limits({ least: 60, greatest: null, unit: null }, 'en-GB')).toBe('at least 60')
    expect(limits({ least: null, greatest: null, unit: 'mm' }, 'en-GB')).toBe('')
    expect(hours(5.5, 'en-GB')).toBe('5.5\u00a0h')
    expect(counted(14, 'piece', 'pieces', 'en-GB')).toBe('14 pieces')
  })
})
