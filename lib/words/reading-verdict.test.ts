import { describe, expect, it } from 'vitest'
import { decimalSign, readingVerdict } from './reading-verdict.ts'

const pressure = { least: 3.1, greatest: 4.5, unit: 'bar' }

describe('readingVerdict', () => {
  it.each([
    [3.9, true, '3.9 bar · within 3.1 to 4.5 bar'],
    [3.1, true, '3.1 bar · within 3.1 to 4.5 bar'],
    [2.7, false, '2.7 bar · under the limits, 3.1 to 4.5 bar'],
    [4.51, false, '4.51 bar · over the limits, 3.1 to 4.5 bar'],
  ])('says of %s before it is sent whether it lies within', (value, within, text) => {
    expect(readingVerdict(pressure, value, 'en-GB')).toEqual({ within, text })
  })

  it('says the one limit that there is', () => {
    const runOut = { least: null, greatest: 0.1, unit: 'mm' }
    expect(readingVerdict(runOut, 0.08, 'en-GB').text).toBe('0.08 mm · within, at most 0.1 mm')
    expect(readingVerdict(runOut, 0.12, 'en-GB')).toEqual({
      within: false,
      text: '0.12 mm · over the limit, at most 0.1 mm',
    })
    expect(readingVerdict({ least: 60, greatest: null, unit: 'µm' }, 70, 'en-GB').text).toBe(
      '70 µm · within, at least 60 µm',
    )
  })

  it('judges nothing where there are no limits', () => {
    expect(readingVerdict({ least: null, greatest: null, unit: null }, 12, 'en-GB')).toEqual({
      within: true,
      text: '12',
    })
  })

  it('writes as the reader does', () => {
    expect(readingVerdict(pressure, 3.9, 'de-DE').text).toBe('3,9 bar · within 3,1 to 4,5 bar')
  })
})

describe('decimalSign', () => {
  it('is the one of the reader’s own keyboard', () => {
    expect(decimalSign('en-GB')).toBe('.')
    expect(decimalSign('de-DE')).toBe(',')
    expect(decimalSign('fr-FR')).toBe(',')
  })
})
