import { describe, expect, it } from 'vitest'
import { shownBy, worked } from '../../test/worked-sum.ts'
import { abrasive } from './abrasive.ts'

describe('abrasive grades', () => {
  // Mean grains of ISO 6344 / FEPA P and of inch grit: published tables (read).
  it.each([
    [{ grade: 'P320' }, { grain: '46.2' }],
    [{ grade: 'P80' }, { grain: '201.0' }],
    [{ grade: 'P100' }, { grain: '162.0' }],
    [{ grade: 'P120' }, { grain: '125.0' }],
    [
      { grade: '400', series: 'inch grit' },
      { like: 'P800', 'like grain': '21.8' },
    ],
    [
      { grade: '600', series: 'inch grit' },
      { like: 'P1200', 'like grain': '15.3' },
    ],
  ])('%o', (input, shown) => {
    expect(shownBy(abrasive, input)).toMatchObject(shown)
  })

  it('say that P400 after P180 is too far, and what goes between', () => {
    const step = { grade: 'P180', next: 'P400' }
    expect(shownBy(abrasive, step)).toMatchObject({ step: '0.43' })
    expect(worked(abrasive, step).verdict).toEqual({
      passes: false,
      words: 'Too far: put P240 or P280 between',
    })
  })
})
