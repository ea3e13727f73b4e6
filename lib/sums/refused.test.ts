import { describe, expect, test } from 'vitest'
import { allSums, sumNamed } from './all-sums.ts'
import { fieldsOf } from './sum.ts'

const faultsOf = (sum: string, input: object) => {
  const answer = sumNamed(sum)?.work(input)
  if (answer?.outcome !== 'refused') throw new Error(`It was worked: ${JSON.stringify(answer)}`)
  return answer.faults
}
const steel = { metal: 'steel', gauge: 'magnetic' }
const band = [66, 62, 71, 62, 49]
const quantity = { area: 10, coats: 1, dryFilm: 50, solids: 50, transfer: 65, waste: 0 }

const refused: readonly (readonly [
  why: string,
  sum: string,
  input: object,
  field: string,
  ask: boolean,
])[] = [
  [
    'a tinter that is not in the recipe',
    'mix-correction',
    {
      recipe: [
        { name: 'white', grams: 300, inCup: 300 },
        { name: 'green', inCup: 0.5 },
      ],
    },
    'recipe.1.grams',
    false,
  ],
  [
    'a recipe without its grams',
    'mix-correction',
    { recipe: [{ name: 'white' }] },
    'recipe.0.grams',
    false,
  ],
  [
    'less than nothing in the cup',
    'mix-correction',
    { recipe: [{ name: 'white', grams: 300, inCup: -1 }] },
    'recipe.0.inCup',
    false,
  ],
  ['an empty recipe', 'mix-correction', { recipe: [] }, 'recipe', false],
  [
    'a running total that falls',
    'mix-correction',
    {
      scale: 'running total',
      recipe: [
        { name: 'a', grams: 5, inCup: 9 },
        { name: 'b', grams: 5, inCup: 4 },
      ],
    },
    'recipe.1.inCup',
    false,
  ],
  [
    'thinner of nobody knows what',
    'volume-ratio',
    {
      ratioBy: 'volume',
      partsA: 2,
      partsB: 1,
      thinner: 10,
      volume: 100,
      densityA: 1,
      densityB: 1,
      densityThinner: 1,
    },
    'basis',
    false,
  ],
  [
    'a density in kg/m³',
    'volume-ratio',
    {
      ratioBy: 'volume',
      partsA: 2,
      partsB: 1,
      thinner: 10,
      basis: 'paint',
      volume: 100,
      densityA: 1020,
      densityB: 1,
      densityThinner: 1,
    },
    'densityA',
    true,
  ],
  [
    'a ratio by weight',
    'volume-ratio',
    {
      ratioBy: 'weight',
      partsA: 2,
      partsB: 1,
      thinner: 10,
      basis: 'paint',
      volume: 100,
      densityA: 1,
      densityB: 1,
      densityThinner: 1,
    },
    'ratioBy',
    false,
  ],
  ['a transfer of 0.65', 'paint-quantity', { ...quantity, transfer: 0.65 }, 'transfer', true],
  ['no solids', 'paint-quantity', { ...quantity, solids: 0 }, 'solids', false],
  ['neither film', 'wet-film', { solids: 50, thinner: 0 }, 'dry', false],
  ['no humidity at all', 'dew-point', { air: 20, humidity: 0 }, 'humidity', false],
  ['a humidity of 0.6', 'dew-point', { air: 20, humidity: 0.6 }, 'humidity', true],
  [
    'a margin under 3 °C',
    'dew-point',
    { air: 20, humidity: 60, surface: 18, margin: 2.5 },
    'margin',
    false,
  ],
  [
    'a margin of 5 °F, which is 2.8 °C',
    'dew-point',
    { degrees: '°F', air: 68, humidity: 60, surface: 66, margin: 5 },
    'margin',
    false,
  ],
  ['a blank reading', 'dew-point', { humidity: 60 }, 'air', false],
  ['metal at 6 °C', 'cure', { hours: 16, reference: 20, metal: 6 }, 'metal', false],
  [
    'a nominal of 35 µm',
    'film-80-20',
    { nominal: 35, times: 3, ...steel, readings: band },
    'nominal',
    false,
  ],
  [
    'a magnetic gauge on aluminium',
    'film-80-20',
    { nominal: 60, times: 3, metal: 'aluminium', gauge: 'magnetic', readings: band },
    'gauge',
    false,
  ],
  [
    'too few spots',
    'film-by-spots',
    { least: 100, greatest: 150, ...steel, spots: [{ readings: [100, 101, 102] }] },
    'spots',
    false,
  ],
  ['400, of which series', 'abrasive', { grade: '400' }, 'grade', true],
  ['a grade between grades', 'abrasive', { grade: 'P333' }, 'grade', false],
  ['a field that isn’t asked', 'wheel-rate', { rate: 20, motion: 0.6, angle: 3 }, 'angle', false],
]

test.each(refused)(
  '%s is refused or asked about, by its field: %s',
  (_, sum, input, field, ask) => {
    const fault = faultsOf(sum, input).find((one) => one.field === field)
    expect(fault).toMatchObject({ field, ask })
    expect(fault?.message.length).toBeGreaterThan(10)
  },
)

describe('every sum', () => {
  test.each(allSums)(
    '$name names each field that is missing, and takes no blank for zero',
    (sum) => {
      const needed = fieldsOf(sum).filter(({ optional }) => !optional)
      const answer = sum.work({})
      if (answer.outcome !== 'refused') throw new Error('It was worked from nothing.')
      if (needed.length > 0)
        expect(answer.faults.map(({ field }) => field).toSorted()).toEqual(
          needed.map(({ name }) => name).toSorted(),
        )
    },
  )

  test.each(allSums)(
    '$name says its formula and where it is from',
    ({ formula, source, tolerance }) => {
      for (const said of [formula, source, tolerance]) expect(said.length).toBeGreaterThan(3)
    },
  )
})
