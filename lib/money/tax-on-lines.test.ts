import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Minor, TaxRate } from '../record/scalars.ts'
import { minorOf, taxOf } from '../record/tax.ts'
import { sumOf } from './sum.ts'

const tax = (net: number, rate: number) => taxOf(Minor.parse(net), TaxRate.parse(rate))
const line = (net: number, rate: number) => ({
  net: Minor.parse(net),
  taxRate: TaxRate.parse(rate),
})

describe('tax on a line', () => {
  it.each([
    // 86.76p goes to 87p: HMRC's VAT guide (Notice 700), 17.5, each line's tax to the nearer penny.
    // Figure from memory; that 17.5 allows the nearer 1p read in HMRC's manual VATREC12010.
    [43_38, 200, 87],
    [12_34, 2000, 2_47],
    [12_32, 2000, 2_46],
    // Exact halves, up: 0.5 and 12.5 pence.
    [2, 2500, 1],
    [50, 2500, 13],
    [1, 2000, 0],
    [0, 2000, 0],
    [99_999, 0, 0],
    [10_001, 10_000, 10_001],
  ])('of %i minor units at %i hundredths of a per cent is %i', (net, rate, expected) => {
    expect(tax(net, rate)).toBe(expected)
  })

  it('goes away from zero for a minus, so that a credit undoes its charge to the penny', () => {
    expect(tax(-2, 2500)).toBe(-1)
    fc.assert(
      fc.property(fc.integer(), fc.integer({ min: 0, max: 10_000 }), (net, rate) => {
        expect(tax(-net, rate) + tax(net, rate)).toBe(0)
      }),
    )
  })

  it('is never further than half a unit from the exact tax', () => {
    fc.assert(
      fc.property(
        fc.bigInt({ min: -(10n ** 14n), max: 10n ** 14n }),
        fc.integer({ min: 0, max: 10_000 }),
        (net, rate) => {
          const rest = BigInt(tax(Number(net), rate)) * 10_000n - net * BigInt(rate)
          expect(rest <= 5_000n && rest >= -5_000n).toBe(true)
        },
      ),
    )
  })

  it('is rounded on each line and then added, not the other way round', () => {
    const lines = Array.from({ length: 3 }, () => line(2, 2500))
    expect(sumOf(lines)).toEqual({ net: 6, tax: 3, gross: 9 })
    expect(tax(6, 2500)).toBe(2)
  })

  it('throws rather than be a little wrong beyond what a whole number holds', () => {
    const most = line(Number.MAX_SAFE_INTEGER, 0)
    expect(sumOf([most]).net).toBe(Number.MAX_SAFE_INTEGER)
    expect(() => sumOf([most, line(1, 0)])).toThrow(RangeError)
    expect(() => minorOf(2n ** 53n)).toThrow(RangeError)
  })
})
