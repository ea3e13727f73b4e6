import { describe, expect, it } from 'vitest'
import { askedAbout, shownBy } from '../../test/worked-sum.ts'
import { abrasive } from './abrasive.ts'
import { paintQuantity, wetFilm } from './paint.ts'

const area = { area: 14.5, coats: 2, dryFilm: 30, solids: 42, transfer: 65, waste: 0 }

describe('what is odd at the gun is asked about, and each answer is worked', () => {
  it('a transfer of 0.65 is 65 %, or really 0.65 %', () => {
    const asked = askedAbout(paintQuantity, { ...area, transfer: 0.65 })
    expect(asked?.field).toBe('transfer')
    expect(asked?.next.map((next) => shownBy(paintQuantity, next).litres)).toEqual([
      '3.19',
      '318.68',
    ])
  })

  it('solids of 0.42 are 42 %', () => {
    const asked = askedAbout(paintQuantity, { ...area, solids: 0.42 })
    expect(shownBy(paintQuantity, asked?.next[0])).toMatchObject({ litres: '3.19' })
  })

  it('of two films the one that counts', () => {
    const asked = askedAbout(wetFilm, { dry: 60, wet: 150, solids: 48, thinner: 0 })
    expect(asked?.next.map((next) => shownBy(wetFilm, next))).toEqual([
      { wet: '125.0' },
      { dry: '72.0' },
    ])
  })

  it('a paper of 400 is P400 or inch grit', () => {
    const asked = askedAbout(abrasive, { grade: '400' })
    expect(asked?.next.map((next) => shownBy(abrasive, next).grain)).toEqual(['35.0', '23.0'])
  })
})
