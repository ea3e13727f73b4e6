import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { bearingClearance } from './bearing-clearance.ts'
import { ringGap } from './ring-gap.ts'

describe('the gap of a piston ring', () => {
  // A trade magazine of January 2019 (read) prints 0.018 in for the first and 0.020 in for the second.
  it.each([
    [4.03, 0.0045, '0.0181', '0.461'],
    [4.03, 0.005, '0.0202', '0.512'],
    [3.268, 0.004, '0.0131', '0.332'],
  ])('in a bore of %s in at %s', (bore, factor, inches, mm) => {
    expect(shownBy(ringGap, { unit: 'in', bore, factor })).toEqual({ in: inches, mm })
  })

  it('asks whether a bore of 83 in is in mm, and goes on with the answer', () => {
    const asked = askedAbout(ringGap, { unit: 'in', bore: 83, factor: 0.004 })
    expect(asked?.field).toBe('bore')
    expect(shownBy(ringGap, asked?.next[0])).toEqual({ in: '0.0131', mm: '0.332' })
  })

  it('is held under the rule and never over it; a wide one is to be measured again', () => {
    const at = (read: number) => worked(ringGap, { unit: 'in', bore: 4, factor: 0.004, read })
    expect(at(0.0159).verdict?.passes).toBe(false)
    expect(at(0.016).verdict?.passes).toBe(true)
    expect(at(0.024).warnings).toEqual([])
    expect(at(0.025)).toMatchObject({ verdict: { passes: true }, warnings: [expect.any(String)] })
  })

  it('is the ring maker’s where there is one, and says so', () => {
    const input = { unit: 'in', bore: 4, factor: 0.004, maker: 0.014, read: 0.015 }
    expect(worked(ringGap, input).verdict).toEqual({
      passes: true,
      words: 'Not under the maker’s figure',
    })
    expect(worked(ringGap, input).working.at(-1)).toContain('replaces the rule')
  })

  it('has no factor of its own, and no bore of half an inch', () => {
    expect(refusedFor(ringGap, { unit: 'in', bore: 4 })).toEqual(['factor'])
    expect(refusedFor(ringGap, { unit: 'mm', bore: 12, factor: 0.004 })).toEqual(['bore'])
  })
})

describe('the clearance of a bearing', () => {
  // Common practice, arithmetic.
  it.each([
    [{ unit: 'in', journal: 2 }, '0.0020', '0.051'],
    [{ unit: 'in', journal: 2.375 }, '0.0024', '0.060'],
    [{ unit: 'mm', journal: 50.8 }, '0.0020', '0.051'],
    [{ unit: 'in', journal: 2, added: 0.0005 }, '0.0025', '0.064'],
  ])('on %o', (input, inches, mm) => {
    expect(shownBy(bearingClearance, input)).toEqual({ in: inches, mm })
  })

  it('asks whether a journal of 50.8 in is in mm, and holds one that is too tight', () => {
    const asked = askedAbout(bearingClearance, { unit: 'in', journal: 50.8 })
    expect(shownBy(bearingClearance, asked?.next[0])).toMatchObject({ mm: '0.051' })
    const tight = worked(bearingClearance, { unit: 'in', journal: 2, read: 0.0019 })
    expect(tight.verdict?.passes).toBe(false)
  })
})
