import * as z from 'zod/mini'
import { Decimal, toPlaces } from './decimal.ts'
import { choice, measure, rows, words } from './fields.ts'
import { ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

/** A scale's last figure, in g: less than half of it over is none. */
const SCALE_G = 0.1
/** Beyond this factor an over-pour is more than the scale's play. */
const PLAY = 1.0005

const Row = z.strictObject({
  name: words('Tinter'),
  grams: z.optional(measure('Recipe', 'g', { above: 0, greatest: 100_000 })),
  inCup: z.optional(
    measure('In the cup', 'g', {
      least: 0,
      greatest: 100_000,
      help: 'Empty where none of it was poured yet.',
    }),
  ),
})

/**
 * What to add to each component after over-pours: k = max(1, max pᵢ/rᵢ), addᵢ = k·rᵢ − pᵢ, total k·Σrᵢ. Arithmetic of ratios; trade practice,
 * no standard.
 */
export const mixCorrection = defineSum({
  name: 'mix-correction',
  title: 'Mix correction after an over-pour',
  group: 'paint',
  formula:
    'k = max(1, max(in the cup ÷ recipe)); add = k × recipe − in the cup; new total = k × sum of the recipe',
  source: 'Arithmetic of ratios; trade practice, no standard.',
  tolerance:
    '0.05 g for each component; the adds as shown may differ from the total as shown by some 0.1 g.',
  hazards: ['isocyanate', 'solvent'],
  input: z.strictObject({
    recipe: rows('Recipe', Row, 'By weight. Components that were poured right are corrected too.'),
    scale: z.optional(
      choice(
        'The scale',
        ['set to zero each time', 'running total'],
        {
          'set to zero each time': 'Set to zero before each pour',
          'running total': 'Running total: the reading after each pour',
        },
        'With a running total “in the cup” is what the scale read after that pour.',
      ),
    ),
    cup: z.optional(
      measure('The cup or ticket takes at most', 'g', { above: 0, greatest: 100_000 }),
    ),
  }),
  reckon({ recipe, scale = 'set to zero each time', cup }) {
    const faults: Fault[] = []
    const poured =
      scale === 'running total'
        ? differences(recipe, faults)
        : recipe.map(({ inCup }) => inCup ?? 0)
    recipe.forEach(({ name, grams }, i) => {
      if (grams !== undefined) return
      faults.push(
        (poured[i] ?? 0) > 0
          ? fault(
              `recipe.${i}.grams`,
              `${name} is not in this recipe and can’t be corrected by adding.`,
            )
          : fault(
              `recipe.${i}.grams`,
              `${name}: its grams in the recipe are missing. A blank is not zero.`,
            ),
      )
    })
    const double = recipe.findIndex(
      ({ name }, i) => recipe.findIndex((other) => other.name.trim() === name.trim()) < i,
    )
    if (double !== -1)
      faults.push(
        ask(`recipe.${double}.name`, `${recipe[double]?.name} stands twice: which line is meant?`),
      )
    if (faults.length > 0) return refuse(...faults)

    const parts = recipe.map(({ name, grams = 0 }, i) => ({
      name,
      recipe: new Decimal(grams),
      poured: new Decimal(poured[i] ?? 0),
    }))
    const whole = parts.reduce((sum, part) => sum.plus(part.recipe), new Decimal(0))
    const worst = parts.reduce((most, part) =>
      part.poured.times(most.recipe).gt(most.poured.times(part.recipe)) ? part : most,
    )
    const over = worst.poured.minus(worst.recipe)
    const ratio = worst.poured.div(worst.recipe)
    const none = over.lte(0) || (over.lt(SCALE_G / 2) && ratio.lt(PLAY))
    // Where the whole recipe doesn't fit, less of it may: down to what is in the cup, and to nothing before the first pour.
    const smaller = none && cup !== undefined && whole.gt(cup) && ratio.times(whole).lte(cup)
    const least = worst.poured.gt(0) ? ratio : new Decimal(cup ?? 0).div(whole)
    const k = smaller ? least : none ? new Decimal(1) : ratio
    const total = k.times(whole)
    const adds = parts.map((part) => {
      const add = k.times(part.recipe).minus(part.poured)
      return { name: part.name, grams: add.lt(0) ? 0 : add.toNumber() }
    })
    const figures = [
      figure('factor', 'Factor', k.toNumber(), '', 4),
      figure('total', 'New total', total.toNumber(), 'g', 1),
      ...adds.map(({ name, grams }) => figure(`add ${name}`, `Add ${name}`, grams, 'g', 1)),
    ]
    const working = [
      smaller
        ? `Nothing is over, and ${whole} g don’t fit: k = ${k.toFixed(4)}, ${worst.poured.gt(0) ? `what ${worst.name} in the cup is of its recipe` : 'what fills the cup'}`
        : none
          ? 'Nothing is over: k = 1'
          : `k = ${worst.poured} ÷ ${worst.recipe} (${worst.name}, the worst over-pour) = ${k.toFixed(4)}`,
      ...parts.map(
        ({ name, recipe: grams, poured: cupGrams }, i) =>
          `${name}: ${k.toFixed(4)} × ${grams} − ${cupGrams} = ${toPlaces(adds[i]?.grams ?? 0, 1)} g`,
      ),
      `New total: ${k.toFixed(4)} × ${whole} = ${total.toFixed(1)} g`,
    ]
    const again = 'Weigh again after every pour: a correction can be over-poured too.'
    if (smaller)
      return result(figures, {
        verdict: {
          passes: true,
          words: worst.poured.gt(0)
            ? `The least total that fits is ${total.toFixed(1)} g; up to ${cup} g may be mixed in the same ratio`
            : `Nothing is poured yet: ${cup} g fill the cup`,
        },
        working,
        warnings: [again],
      })
    if (cup === undefined || total.lte(cup)) return result(figures, { working, warnings: [again] })
    return tooFull()

    /** No total fits: with a smaller one something would have to come out. So some of the stirred mix is poured off first. */
    function tooFull() {
      const inCup = parts.reduce((sum, part) => sum.plus(part.poured), new Decimal(0))
      const fits = ratio.times(whole)
      const why = `No total fits: with ${worst.poured} g of ${worst.name} in the cup the least that is right is ${fits.toFixed(1)} g, ${fits.minus(cup ?? 0).toFixed(1)} g more than it takes, and nothing can come out alone.`
      const kept = new Decimal(cup ?? 0).div(total)
      const off = inCup.times(new Decimal(1).minus(kept))
      return result(
        [
          ...figures,
          figure('pour off', 'Or stir, and pour off first', off.toNumber(), 'g', 1),
          ...adds.map(({ name, grams }) =>
            figure(
              `then add ${name}`,
              `Then add ${name}`,
              new Decimal(grams).times(kept).toNumber(),
              'g',
              1,
            ),
          ),
          figure('start again', 'Starting again takes', whole.toNumber(), 'g', 1),
        ],
        {
          verdict: { passes: false, words: 'It doesn’t fit the cup' },
          working: [
            ...working,
            `Poured off: ${inCup.toFixed(1)} × (1 − ${cup} ÷ ${total.toFixed(1)}) = ${off.toFixed(1)} g of the stirred mix; what stays is in the same ratio, so each add shrinks alike.`,
          ],
          warnings: [why, 'Poured-off mix is waste by the data sheet, not stock.', again],
        },
      )
    }
  },
})

/** What was poured of each where the scale ran on: a reading that falls can't be. */
function differences(
  recipe: readonly { readonly name: string; readonly inCup?: number | undefined }[],
  faults: Fault[],
): number[] {
  let before = 0
  return recipe.map(({ name, inCup }, i) => {
    if (inCup === undefined) return 0
    if (inCup < before)
      faults.push(
        fault(
          `recipe.${i}.inCup`,
          `${name}: ${inCup} g is less than the reading before it, ${before} g. A running total doesn’t fall.`,
        ),
      )
    const poured = new Decimal(inCup).minus(before).toNumber()
    before = inCup
    return Math.max(poured, 0)
  })
}
