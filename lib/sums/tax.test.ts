import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, valueBy, worked } from '../../test/worked-sum.ts'
import { splitSum } from './split-sum.ts'
import { stagedInvoice } from './staged-invoice.ts'
import { taxInclusive } from './tax-inclusive.ts'
import { taxLines } from './tax-lines.ts'

const invoice = (rate: number, nets: readonly number[], method = 'line') => ({
  lines: nets.map((net) => ({ net, rate })),
  method,
})

describe('tax on lines', () => {
  // Line and invoice method: HMRC manual VATREC12010 (read).
  it.each([
    [20, [33.33, 33.33, 33.33], '99.99', '20.01', '20.00', '0.01'],
    [20, [10.02, 10.02, 10.02], '30.06', '6.00', '6.01', '-0.01'],
    [17.5, [19.99, 5.45, 102.37], '127.81', '22.36', '22.37', '-0.01'],
    [5, [0.3], '0.30', '0.02', '0.02', '0.00'],
    [17.5, [1.4, 1.4], '2.80', '0.50', '0.49', '0.01'],
  ])('at %s %% on %o', (rate, nets, net, byLine, byInvoice, difference) => {
    expect(shownBy(taxLines, invoice(rate, nets))).toMatchObject({
      net,
      tax: byLine,
      'other tax': byInvoice,
      difference,
    })
    expect(shownBy(taxLines, invoice(rate, nets, 'invoice'))).toMatchObject({ tax: byInvoice })
  })

  it.each([
    [20, -33.33, '-33.33', '-6.67', '-40.00'],
    [5, -0.3, '-0.30', '-0.02', '-0.32'],
  ])('at %s %% is mirrored by the credit of a line of %s', (rate, line, net, tax, gross) => {
    const credit = { ...invoice(rate, [line]), reverses: '2026-014' }
    expect(shownBy(taxLines, credit)).toMatchObject({ net, tax, gross })
    expect(worked(taxLines, credit).figures[0]?.label).toBe('Credit note')
  })

  it('goes by rate before it goes by invoice', () => {
    const mixed = {
      lines: [...invoice(20, [33.33, 33.33]).lines, ...invoice(5, [0.3]).lines],
      method: 'invoice',
    }
    // 66.66 at 20 % is 13.33, 0.30 at 5 % is 0.02.
    expect(shownBy(taxLines, mixed)).toMatchObject({ tax: '13.35', 'other tax': '13.36' })
  })

  it('takes three decimals from quantity and price only', () => {
    expect(refusedFor(taxLines, invoice(20, [1.005]))).toEqual(['lines.0.net'])
    const hours = { lines: [{ quantity: 1.255, price: 68.5, rate: 20 }], method: 'line' }
    expect(shownBy(taxLines, hours)).toMatchObject({ net: '85.97', tax: '17.19' })
    const twice = { lines: [{ net: 1, quantity: 1, price: 1, rate: 20 }], method: 'line' }
    expect(refusedFor(taxLines, twice)).toEqual(['lines.0.net'])
  })

  it('is refused without a method, for a credit of no invoice, and for 0 % without a reason', () => {
    expect(refusedFor(taxLines, { lines: [{ net: 1, rate: 20 }] })).toEqual(['method'])
    expect(refusedFor(taxLines, invoice(20, [-1]))).toEqual(['reverses'])
    expect(refusedFor(taxLines, invoice(0, [1]))).toEqual(['untaxed'])
    expect(refusedFor(taxLines, { ...invoice(0, [1]), untaxed: 'reverse charge' })).toEqual([])
    expect(refusedFor(taxLines, invoice(101, [1]))).toEqual(['lines.0.rate'])
    expect(refusedFor(taxLines, invoice(17.555, [1]))).toEqual(['lines.0.rate'])
  })
})

describe('tax within a sum', () => {
  // A sixth at 20 %.
  it.each([
    [1000, '166.67', '833.33'],
    [99.99, '16.67', '83.32'],
  ])('of %s', (gross, tax, net) => {
    expect(shownBy(taxInclusive, { gross, rate: 20 })).toEqual({ tax, net })
  })

  it('adds up to the sum for every penny from 0.01 to 100.00', () => {
    for (let pence = 1; pence <= 10_000; pence += 1) {
      const input = { gross: pence / 100, rate: 20 }
      const back = valueBy(taxInclusive, input, 'tax') + valueBy(taxInclusive, input, 'net')
      expect(Math.round(back * 100)).toBe(pence)
    }
  })
})

describe('a sum split', () => {
  it('in three is 33.34, 33.33, 33.33', () => {
    expect(shownBy(splitSum, { total: 100, weights: [1, 1, 1] })).toEqual({
      'part 1': '33.34',
      'part 2': '33.33',
      'part 3': '33.33',
    })
  })

  it('adds up to itself, whatever the weights', () => {
    const weights = fc.array(fc.integer({ min: 0, max: 50 }), { minLength: 1, maxLength: 9 })
    fc.assert(
      fc.property(fc.integer({ min: -1e7, max: 1e7 }), weights, (pence, by) => {
        fc.pre(by.some((weight) => weight > 0))
        const { figures } = worked(splitSum, { total: pence / 100, weights: by })
        const back = figures.reduce((sum, { value }) => sum + Math.round(Number(value) * 100), 0)
        expect(back).toBe(pence)
      }),
    )
  })

  it('is refused by weights of nothing', () => {
    expect(refusedFor(splitSum, { total: 1, weights: [0, 0] })).toEqual(['weights'])
  })
})

describe('a staged invoice', () => {
  const stage = { net: 4000, retention: 5, rate: 20, deposit: 1200 }

  // Deposits VATTOS5105, retention VATTOS5170 (read).
  it('holds back 5 %, takes off the deposit and taxes the rest', () => {
    expect(shownBy(stagedInvoice, stage)).toEqual({
      retained: '200.00',
      now: '2800.00',
      tax: '560.00',
      'to pay': '3360.00',
      'later tax': '40.00',
    })
  })

  it('asks where the deposit is more than the stage, and goes on with what fits', () => {
    const asked = askedAbout(stagedInvoice, { ...stage, deposit: 6000 })
    expect(asked?.field).toBe('deposit')
    expect(shownBy(stagedInvoice, asked?.next[0])).toMatchObject({ 'to pay': '0.00' })
  })

  it('is refused for a part of a penny and a blank deposit', () => {
    expect(refusedFor(stagedInvoice, { ...stage, net: 10.001 })).toEqual(['net'])
    expect(refusedFor(stagedInvoice, { ...stage, deposit: null })).toEqual(['deposit'])
  })
})
