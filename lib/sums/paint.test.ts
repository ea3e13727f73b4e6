import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { abrasive } from './abrasive.ts'
import { cure } from './cure.ts'
import { dewPointSum } from './dew-point.ts'
import { paintQuantity, volumeRatio, wetFilm } from './paint.ts'

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

const ratio = {
  ratioBy: 'volume',
  partsA: 2,
  partsB: 1,
  thinner: 0,
  basis: 'paint',
  volume: 800,
  densityA: 0.98,
  densityB: 1.05,
}

describe('what the data sheet gives', () => {
  it('a density of 1020 is asked about, and one of 3 refused', () => {
    const asked = askedAbout(volumeRatio, { ...ratio, densityA: 980 })
    expect(shownBy(volumeRatio, asked?.next[0])).toMatchObject({ 'paint g': '522.7' })
    expect(refusedFor(volumeRatio, { ...ratio, densityB: 3 })).toEqual(['densityB'])
  })

  it('the thinner’s density is needed where there is thinner', () => {
    expect(shownBy(volumeRatio, ratio)).toMatchObject({ 'thinner g': '0.0' })
    expect(refusedFor(volumeRatio, { ...ratio, thinner: 5 })).toEqual(['densityThinner'])
  })

  it('tins are rounded up as one orders, never where it is exactly enough', () => {
    const exact = { area: 22, coats: 1, dryFilm: 50, solids: 50, transfer: 100, waste: 0 }
    expect(shownBy(paintQuantity, { ...exact, tin: 1.1 })).toMatchObject({ tins: '2' })
    expect(shownBy(paintQuantity, { ...exact, tin: 1 })).toMatchObject({
      litres: '2.20',
      tins: '3',
    })
    expect(refusedFor(paintQuantity, { ...exact, coats: 1.5 })).toEqual(['coats'])
  })
})

describe('a cure by metal temperature', () => {
  it('lengthens a least wait and never shortens it, and shortens a recoat window and never lengthens it', () => {
    const sheet = { hours: 24, reference: 20 }
    expect(shownBy(cure, { ...sheet, metal: 30 })).toMatchObject({
      hours: '12.0',
      'least wait': '24.0',
      window: '12.0',
    })
    expect(shownBy(cure, { ...sheet, metal: 10 })).toMatchObject({
      hours: '48.0',
      'least wait': '48.0',
      window: '24.0',
    })
  })

  it('stays within what the sheet prints', () => {
    const sheet = { hours: 24, reference: 20, sheetLeast: 15, sheetGreatest: 35 }
    expect(refusedFor(cure, { ...sheet, metal: 14 })).toEqual(['metal'])
    expect(refusedFor(cure, { ...sheet, metal: 36 })).toEqual(['metal'])
    expect(refusedFor(cure, { ...sheet, metal: 15 })).toEqual([])
  })
})

describe('readings of the air', () => {
  const readings = { air: 20, humidity: 60, surface: 18 }
  it('say nothing once they are older than the shop’s limit', () => {
    expect(worked(dewPointSum, { ...readings, minutes: 30 }).verdict?.passes).toBe(true)
    expect(worked(dewPointSum, { ...readings, minutes: 31 }).verdict).toMatchObject({
      passes: false,
      words: expect.stringContaining('Too old'),
    })
    expect(worked(dewPointSum, { ...readings, minutes: 31, oldest: 60 }).verdict?.passes).toBe(true)
  })

  it('below freezing let no coat on', () => {
    expect(worked(dewPointSum, { air: -2, humidity: 50, surface: 5 }).verdict?.passes).toBe(false)
  })

  it('of 0.6 % are asked about', () => {
    const asked = askedAbout(dewPointSum, { air: 20, humidity: 0.6 })
    expect(shownBy(dewPointSum, asked?.next[0])).toMatchObject({ 'dew point': '12.0' })
    expect(asked?.next).toHaveLength(2)
  })
})

describe('the step from paper to paper', () => {
  it.each([
    ['P180', 'P400', 'Too far: put P240 or P280 between'],
    ['P80', 'P400', 'Too far: put P120, then P220 between'],
    ['P180', 'P240', 'The step is not too wide'],
    ['P400', 'P180', 'The next paper is coarser: its scratches come back'],
    ['P180', 'P180', 'The same grain again'],
  ])('from %s to %s: %s', (grade, next, words) => {
    expect(worked(abrasive, { grade, next }).verdict?.words).toBe(words)
  })
})
