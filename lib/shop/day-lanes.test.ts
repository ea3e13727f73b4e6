import { describe, expect, it } from 'vitest'
import { Instant } from '../record/scalars.ts'
import { inRows, onStrip } from './day-lanes.ts'

const at = (text: string) => Instant.parse(`${text}:00.000Z`)
const span = (from: string, to: string) => ({ from: at(from), to: at(to) })
/** Three days in London; the second is the one on which the clock goes forward, of 23 hours. */
const days = ['2027-03-27T00:00', '2027-03-28T00:00', '2027-03-28T23:00', '2027-03-29T23:00'].map(
  at,
)

describe('a strip of days', () => {
  it('places a slot by days and their parts', () => {
    expect(onStrip(span('2027-03-27T12:00', '2027-03-28T00:00'), days)).toEqual({
      from: 0.5,
      to: 1,
    })
  })

  it('counts a day of 23 hours as one', () => {
    expect(onStrip(span('2027-03-28T00:00', '2027-03-28T11:30'), days)).toEqual({
      from: 1,
      to: 1.5,
    })
    expect(onStrip(span('2027-03-28T23:00', '2027-03-29T23:00'), days)).toEqual({ from: 2, to: 3 })
  })

  it('shows of a long slot what lies in it, and nothing of one outside', () => {
    expect(onStrip(span('2027-01-01T00:00', '2027-12-01T00:00'), days)).toEqual({ from: 0, to: 3 })
    expect(onStrip(span('2027-01-01T00:00', '2027-03-27T00:00'), days)).toBeNull()
    expect(onStrip(span('2027-03-29T23:00', '2027-04-02T00:00'), days)).toBeNull()
  })

  it('lays claims for the same hours under each other, and those that follow in one row', () => {
    const first = span('2027-03-27T08:00', '2027-03-27T12:00')
    const rival = span('2027-03-27T09:00', '2027-03-27T11:00')
    const next = span('2027-03-27T12:00', '2027-03-27T16:00')
    expect(inRows([next, rival, first])).toEqual([[first, next], [rival]])
  })
})
