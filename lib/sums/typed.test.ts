import { expect, test } from 'vitest'
import { sumNamed } from './all-sums.ts'
import { rowsOf, type Typed, typedAnew, withoutRow, workTyped } from './typed.ts'

const work = (name: string, typed: Typed) => {
  const sum = sumNamed(name)
  if (sum === undefined) throw new Error(`There is no sum ${name}.`)
  return workTyped(sum, typed, '.')
}
const shown = (name: string, typed: Typed) =>
  work(name, typed).result?.figures.map(({ name: figure, value }) => [figure, value])

test('what is typed is worked; a blank field is named, never taken for zero', () => {
  expect(work('dew-point', { humidity: '60' })).toEqual({
    result: null,
    toType: ['Air, at the panel'],
    wrong: [],
  })
  expect(work('dew-point', { air: '20', humidity: '60' }).result?.figures[0]?.value).toBeCloseTo(
    12.0,
    1,
  )
})

test('a figure typed in another unit is converted once, exactly', () => {
  const typed = { dry: '2', 'dry unit': 'thou', solids: '50', thinner: '0' }
  expect(shown('wet-film', typed)).toEqual([['wet', 101.6]])
})

test('a choice that isn’t made is to be made, never guessed', () => {
  expect(work('volume-ratio', {}).toType).toContain('Per cent of')
})

test('“1,234” is asked about, and an answer goes on', () => {
  const typed = { dry: '1,234', solids: '50', thinner: '0' }
  const [fault] = work('wet-film', typed).wrong
  expect(fault?.answers.map(({ says }) => says)).toEqual(['1.2340', '1234'])
  expect(shown('wet-film', { ...typed, ...fault?.answers[1]?.typed })).toEqual([['wet', 2468]])
})

test('what is no figure is said at its field', () => {
  expect(work('wet-film', { dry: 'sixty', solids: '50', thinner: '0' }).wrong).toMatchObject([
    { key: 'dry', answers: [] },
  ])
})

test('an odd figure is asked about, and each answer goes on until it is typed anew', () => {
  const typed = { a: '2', solids: '0.5', thinner: '0', dry: '60' }
  const area = { area: '10', coats: '1', dryFilm: '50', transfer: '0.65', waste: '0', solids: '50' }
  const [fault] = work('paint-quantity', area).wrong
  expect(fault?.key).toBe('transfer')
  for (const answer of fault?.answers ?? [])
    expect(work('paint-quantity', { ...area, ...answer.typed }).result).not.toBeNull()
  expect(typedAnew({ ...typed, meant: 'solids dry' }, 'solids', '48')).toEqual({
    ...typed,
    solids: '48',
    meant: 'dry',
  })
})

const spots: Typed = {
  least: '100',
  greatest: '150',
  metal: 'steel',
  gauge: 'magnetic',
  'spots rows': '6',
  'spots.0.readings': '98 104/101',
  'spots.1.readings': '112, 118, 115',
  'spots.3.readings': '131 126 130',
  'spots.4.readings': '140 138 144',
  'spots.5.readings': '85 92 90',
}

test('rows of readings are read, and one that is blank all along counts for nothing', () => {
  expect(shown('film-by-spots', spots)?.at(-1)?.[1]).toBeCloseTo(114.933, 3)
})

test('what is wrong in a row is said at that row, also below a blank one', () => {
  expect(work('film-by-spots', { ...spots, 'spots.4.readings': '140 138' }).wrong).toMatchObject([
    { key: 'spots.4.readings' },
  ])
})

test('a row that is being typed is no fault yet, but a tinter that isn’t in the recipe is', () => {
  const typed = { 'recipe.0.name': 'white' }
  expect(work('mix-correction', typed)).toMatchObject({
    toType: ['Recipe, row 1, Recipe'],
    wrong: [],
  })
  expect(work('mix-correction', { ...typed, 'recipe.0.inCup': '0.5' }).wrong).toMatchObject([
    { key: 'recipe.0.grams' },
  ])
})

test('a row is taken away and the rest moves up', () => {
  const typed = {
    'recipe rows': '3',
    'recipe.0.name': 'a',
    'recipe.1.name': 'b',
    'recipe.2.name': 'c',
  }
  const after = withoutRow(typed, 'recipe', 1)
  expect(after).toEqual({ 'recipe rows': '2', 'recipe.0.name': 'a', 'recipe.1.name': 'c' })
  expect(rowsOf(after, 'recipe')).toBe(2)
})
