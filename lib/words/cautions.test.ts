import { describe, expect, it } from 'vitest'
import { Hazard } from '../record/entities/work.ts'
import { cautionFor, everyHazard, OUTRANKED_BY } from './cautions.ts'

const every = Hazard.options.map((hazard) => ({ hazard, ...cautionFor(hazard) }))

describe('the caution against a hazard', () => {
  it.each(every)('of $hazard is a title and one to three short sentences', ({ title, says }) => {
    expect(title).toMatch(/^[A-Z].*[^.]$/)
    expect(says.length).toBeGreaterThanOrEqual(1)
    expect(says.length).toBeLessThanOrEqual(3)
    for (const sentence of says) {
      expect(sentence).toMatch(/^[A-Z].*\.$/)
      expect(sentence.length).toBeLessThanOrEqual(200)
    }
  })

  it('is offered once for each', () => {
    expect(everyHazard.toSorted()).toEqual(Hazard.options.toSorted())
  })

  it('has a title of its own for each hazard', () => {
    expect(new Set(every.map(({ title }) => title)).size).toBe(every.length)
  })

  it('tells the sprayer of air-fed breathing, and when it may come off (FACTS C1, C2)', () => {
    const words = cautionFor('isocyanate').says.join(' ')
    expect(words).toContain('air-fed breathing')
    expect(words).toContain('clearance time')
  })

  it('says that an empty tank explodes too (FACTS C4)', () => {
    expect(cautionFor('hot work').says.join(' ')).toContain('an empty tank explodes too')
  })

  it('never clears anything, and defers to sheet, local rules and licensed practice', () => {
    expect(OUTRANKED_BY).toMatch(/data sheet, local rules and licensed practice come before/)
    for (const { says } of every) {
      expect(says.join(' ')).not.toMatch(/\b(is safe|certif|guarantee)/i)
    }
  })
})
