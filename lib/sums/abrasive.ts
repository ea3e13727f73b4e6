import * as z from 'zod/mini'
import { choice, words } from './fields.ts'
import { ask, defineSum, fault, figure, refuse, result } from './sum.ts'

/** Mean grain in µm by ISO 6344 / FEPA P; two published tables read. To P220 graded by sieve, so the mean is nominal. */
export const P_GRAIN: ReadonlyMap<string, number> = new Map([
  ['P12', 1815],
  ['P20', 1000],
  ['P40', 425],
  ['P60', 269],
  ['P80', 201],
  ['P100', 162],
  ['P120', 125],
  ['P150', 100],
  ['P180', 82],
  ['P220', 68],
  ['P240', 58.5],
  ['P280', 52.2],
  ['P320', 46.2],
  ['P360', 40.5],
  ['P400', 35],
  ['P500', 30.2],
  ['P600', 25.8],
  ['P800', 21.8],
  ['P1000', 18.3],
  ['P1200', 15.3],
  ['P1500', 12.6],
  ['P2000', 10.3],
  ['P2500', 8.4],
])
/** Mean grain in µm of inch grit, without the P; published tables read. */
export const INCH_GRAIN: ReadonlyMap<string, number> = new Map([
  ['80', 190],
  ['100', 140],
  ['120', 115],
  ['150', 92],
  ['180', 82],
  ['220', 68],
  ['240', 53],
  ['320', 36],
  ['360', 28],
  ['400', 23],
  ['500', 20],
  ['600', 16],
  ['800', 12.6],
  ['1000', 10.3],
])

const series = choice(
  'Which series',
  ['P', 'inch grit'],
  { P: 'P (FEPA, ISO 6344)', 'inch grit': 'Inch grit, without a P' },
  '“400” and “P400” are different papers: 23 and 35 µm.',
)

/** The next grain is not less than about half the last: common practice, no source. */
const STEP = 0.5

function grainOf(grade: string, which: 'P' | 'inch grit' | undefined, field: string) {
  const name = grade.trim().toUpperCase()
  if (/^\d+$/.test(name)) {
    if (which === undefined)
      return ask(field, `${name}: is P${name} meant, or inch grit ${name}?`, [
        { words: `P${name}`, set: { [field]: `P${name}` } },
        { words: `Inch grit ${name}`, set: { series: 'inch grit' } },
      ])
    const key = which === 'P' ? `P${name}` : name
    const grain = (which === 'P' ? P_GRAIN : INCH_GRAIN).get(key)
    return grain === undefined
      ? fault(field, `${name} is no grade of that series that is known here.`)
      : { key, grain, inch: which !== 'P' }
  }
  const grain = P_GRAIN.get(name)
  return grain === undefined
    ? fault(field, `${grade} is no grade that is known here; nothing is guessed between grades.`)
    : { key: name, grain, inch: false }
}

const nearest = (grain: number, among: ReadonlyMap<string, number>) =>
  [...among].reduce((best, next) =>
    Math.abs(Math.log(next[1] / grain)) < Math.abs(Math.log(best[1] / grain)) ? next : best,
  )

/** The two P grades that make the most even steps of one that is too wide, coarser first. */
const evenest = (from: number, to: number): readonly string[] =>
  [...P_GRAIN]
    .map(([key, grain]) => ({ key, grain, worse: Math.min(grain / from, to / grain) }))
    .filter(({ grain, worse }) => grain < from && grain > to && worse >= STEP)
    .toSorted((a, b) => b.worse - a.worse)
    .slice(0, 2)
    .toSorted((a, b) => b.grain - a.grain)
    .map(({ key }) => key)

function ofStep(from: number, to: number) {
  if (to > from)
    return { passes: false, words: 'The next paper is coarser: its scratches come back' }
  if (to === from) return { passes: true, words: 'The same grain again' }
  if (to / from >= STEP) return { passes: true, words: 'The step is not too wide' }
  const between = evenest(from, to)
  return {
    passes: false,
    words: `Too far: put ${between.length > 0 ? between.join(' or ') : ladder(from, to).join(', then ')} between`,
  }
}

/** The fewest P grades that lead down without a step that is too wide: each as fine as the one before allows. */
function ladder(from: number, to: number): readonly string[] {
  const grades: string[] = []
  for (let at = from; to / at < STEP; ) {
    const next = [...P_GRAIN].findLast(
      ([, grain]) => grain < at && grain > to && grain / at >= STEP,
    )
    if (next === undefined) break
    grades.push(next[0])
    at = next[1]
  }
  return grades
}

/** Up to P400 no more than a hundred numbers at once: common practice, no source. */
const farInNumbers = (from: string, to: string): boolean => {
  const numbers = [from, to].map((key) => Number(key.slice(1)))
  const [a = 0, b = 0] = numbers
  return from.startsWith('P') && to.startsWith('P') && b <= 400 && b - a > 100
}

/** Grain of an abrasive paper, the like of it in the other series, and whether a step to the next is too wide. */
export const abrasive = defineSum({
  name: 'abrasive',
  title: 'Abrasive grades',
  group: 'paint',
  formula:
    'equivalent = nearest mean grain on a logarithmic scale; step = grain of the next ÷ grain of the last, at least 0.5',
  source:
    'Mean grains of ISO 6344 / FEPA P and of inch grit: published tables, read. The step: common practice, no source.',
  tolerance: '1 µm to P220, 0.5 µm beyond',
  hazards: ['dust'],
  input: z.strictObject({
    grade: words('Grade', 'Such as P320.'),
    series: z.optional(series),
    next: z.optional(words('Next grade', 'To see whether the step is too wide.')),
  }),
  reckon({ grade, series: which, next }) {
    const found = grainOf(grade, which, 'grade')
    if ('field' in found) return refuse(found)
    const [like, likeGrain] = nearest(found.grain, found.inch ? P_GRAIN : INCH_GRAIN)
    const figures = [
      figure('grain', `Grain of ${found.key}`, found.grain, 'µm', 1),
      figure('like', found.inch ? 'Nearest P grade' : 'Nearest inch grit', like),
      figure('like grain', 'Its grain', likeGrain, 'µm', 1),
    ]
    if (next === undefined) return result(figures)
    const then = grainOf(next, which, 'next')
    if ('field' in then) return refuse(then)
    const ratio = then.grain / found.grain
    return result([...figures, figure('step', 'Step', ratio, '', 2)], {
      verdict: ofStep(found.grain, then.grain),
      working: [`${then.grain} ÷ ${found.grain} = ${ratio.toFixed(2)}`],
      warnings: farInNumbers(found.key, then.key)
        ? [`${found.key} to ${then.key} jumps more than 100 numbers: up to P400 that is much.`]
        : [],
    })
  },
})
