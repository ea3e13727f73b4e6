import { expect, it } from 'vitest'
import { wetFilm } from './wet-film.ts'

it.each([
  // d1, and the outside check: a coating maker's technical note prints 125 µm at 71 % → 176 µm.
  [125, 71, 0, '176.1'],
  // d2, d3
  [60, 48, 0, '125.0'],
  [60, 48, 10, '137.5'],
])(
  'a dry film of %s µm at %s %% solids, thinned %s %%, is laid on at %s µm',
  (dry, solids, thinner, shown) => {
    expect(wetFilm.work({ dry, solids, thinner })).toMatchObject({
      outcome: 'result',
      figures: [{ key: 'wet', unit: 'µm', shown }],
    })
  },
)

it('takes the film in thou, and refuses what is blank, never taking it for nought', () => {
  expect(wetFilm.work({ dry: { value: 2, unit: 'thou' }, solids: 50, thinner: 0 })).toMatchObject({
    figures: [{ shown: '101.6' }],
  })
  expect(wetFilm.work({ dry: 0, solids: '', thinner: null })).toMatchObject({
    outcome: 'refused',
    refusals: [{ field: 'dry' }, { field: 'solids' }, { field: 'thinner' }],
  })
})
