import { describe, expect, it } from 'vitest'
import { askedAbout, refusedFor, shownBy, worked } from '../../test/worked-sum.ts'
import { OHM_PER_KM, warmth } from './cable.ts'
import { cableDrop } from './cable-drop.ts'
import { cableSize } from './cable-size.ts'
import { fuseSize } from './fuse-size.ts'
import { fieldsOf } from './sum.ts'

const lamp = { amps: 8, length: 4.5, ways: 'body', celsius: 20, section: '1.5', system: 12 }

describe('the drop along a cable', () => {
  // IEC 60228 table (read), arithmetic.
  it.each([
    [lamp, '0.479', '3.99'],
    [{ ...lamp, ways: 'wire', celsius: 60 }, '1.108', '9.23'],
    [{ ...lamp, amps: 150, length: 1.6, section: '35' }, '0.133', '1.11'],
    [{ ...lamp, amps: 10, length: 3, section: '2.5', system: 6 }, '0.239', '3.99'],
  ])('%o', (input, drop, percent) => {
    expect(shownBy(cableDrop, input)).toEqual({ drop, percent })
  })

  it('takes in the earth path once it is measured, and warns until then', () => {
    expect(worked(cableDrop, lamp).warnings).toHaveLength(1)
    expect(shownBy(cableDrop, { ...lamp, earth: 0.1 })).toMatchObject({ drop: '0.579' })
    expect(worked(cableDrop, { ...lamp, earth: 0.1 }).warnings).toEqual([])
    expect(refusedFor(cableDrop, { ...lamp, ways: 'wire', earth: 0.1 })).toEqual(['earth'])
  })

  it('passes where it is exactly what is allowed', () => {
    expect(worked(cableDrop, { ...lamp, limit: 0.4788 }).verdict?.passes).toBe(true)
    expect(worked(cableDrop, { ...lamp, limit: 0.4787 }).verdict?.passes).toBe(false)
  })

  it('is refused for a section that is not made, over 30 m and at 110 °C', () => {
    expect(refusedFor(cableDrop, { ...lamp, section: '3' })).toEqual(['section'])
    expect(refusedFor(cableDrop, { ...lamp, length: 31, celsius: 110 })).toEqual([
      'length',
      'celsius',
    ])
  })

  it('offers the sections from thin to thick', () => {
    const section = fieldsOf(cableDrop).find(({ name }) => name === 'section')
    expect(section?.options.map(({ value }) => value).slice(0, 4)).toEqual([
      '0.5',
      '0.75',
      '1',
      '1.5',
    ])
  })

  it('goes by resistances between 1.05 and 1.25 times those of pure copper, 17.241 Ω·mm²/km', () => {
    for (const [section, ohms] of Object.entries(OHM_PER_KM)) {
      const over = Number(ohms) / (17.241 / Number(section))
      expect(over).toBeGreaterThan(1.05)
      expect(over).toBeLessThan(1.25)
    }
  })

  it('grows with warmth as a published table has it, 1 ÷ 0.862 at 60 °C, within 0.5 %', () => {
    expect(Math.abs(warmth(60).toNumber() / (1 / 0.862) - 1)).toBeLessThan(0.005)
  })
})

describe('the section for a drop', () => {
  const run = { amps: 8, length: 4.5, ways: 'wire', celsius: 20, limit: 0.36 }

  it('is the smallest that keeps within it', () => {
    expect(shownBy(cableSize, run)).toEqual({ section: '4', drop: '0.356' })
  })

  it('wants the cable’s own rating too', () => {
    expect(worked(cableSize, run).verdict).toBeNull()
    expect(worked(cableSize, { ...run, rating: 8 }).verdict?.passes).toBe(true)
    expect(worked(cableSize, { ...run, rating: 7.9 }).verdict?.passes).toBe(false)
  })

  it('is refused where not even 50 mm² does', () => {
    expect(refusedFor(cableSize, { ...run, amps: 900, limit: 0.1 })).toEqual(['limit'])
  })
})

describe('a fuse', () => {
  const blade = { fuse: 'blade', rush: 'no' }

  // ISO 8820-3 ratings (from memory), 75 % common practice. The last is the boundary: 7.5 ÷ 0.75 is 10 exactly.
  it.each([
    [{ amps: 8, cable: 21 }, '10.67', '15.0', true],
    [{ amps: 12, cable: 14 }, '16.00', '20.0', false],
    [{ amps: 5.6, cable: 11 }, '7.47', '7.5', true],
    [{ watts: 110, volts: 13.5, cable: 15 }, '10.86', '15.0', true],
    [{ amps: 7.5, cable: 10 }, '10.00', '10.0', true],
  ])('for %o', (circuit, least, fuse, passes) => {
    expect(shownBy(fuseSize, { ...blade, ...circuit })).toMatchObject({ least, fuse })
    expect(worked(fuseSize, { ...blade, ...circuit }).verdict?.passes).toBe(passes)
  })

  it('of glass is asked about: marked by what it carries, or by what blows it', () => {
    const asked = askedAbout(fuseSize, { amps: 6, cable: 20, fuse: 'glass', rush: 'no' })
    expect(asked?.field).toBe('marked')
    expect(asked?.next.map((next) => shownBy(fuseSize, next).fuse)).toEqual(['8.0', '16.0'])
  })

  it('asks which counts where current and load are both given', () => {
    const asked = askedAbout(fuseSize, { ...blade, amps: 8, watts: 55, volts: 13.5, cable: 20 })
    expect(asked?.next.map((next) => shownBy(fuseSize, next).steady)).toEqual(['8.00', '4.07'])
  })

  it('is refused without the cable’s rating, without a current, and above 40 A', () => {
    expect(refusedFor(fuseSize, { ...blade, amps: 8 })).toEqual(['cable'])
    expect(refusedFor(fuseSize, { ...blade, watts: 8, cable: 10 })).toEqual(['amps'])
    expect(refusedFor(fuseSize, { ...blade, amps: 31, cable: 100 })).toEqual(['amps'])
  })

  it('is slow where motors or lamps rush in', () => {
    const input = { ...blade, amps: 8, cable: 21, rush: 'yes' }
    expect(worked(fuseSize, input).warnings).toEqual([expect.stringContaining('slow')])
  })
})
