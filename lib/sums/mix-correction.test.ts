import fc from 'fast-check'
import { expect, test } from 'vitest'
import { mixCorrection } from './mix-correction.ts'

const tenths = (most: number) => fc.integer({ min: 1, max: most * 10 }).map((value) => value / 10)
/** Components with up to three times their grams in the cup, or none yet. */
const mix = fc.array(
  fc
    .record({ grams: tenths(500), share: fc.option(fc.integer({ min: 1, max: 300 }), { nil: 0 }) })
    .map(({ grams, share }) => ({ grams, poured: Math.round((grams * share) / 10) / 10 })),
  { minLength: 1, maxLength: 8 },
)

const corrected = (parts: readonly { grams: number; poured: number }[], cup?: number) => {
  const answer = mixCorrection.work({
    recipe: parts.map(({ grams, poured }, i) => ({ name: `t${i}`, grams, inCup: poured })),
    ...(cup === undefined ? {} : { cup }),
  })
  if (answer.outcome !== 'result') throw new Error(JSON.stringify(answer))
  const values = new Map(answer.figures.map(({ name, value }) => [name, Number(value)]))
  return { of: (name: string) => values.get(name) ?? Number.NaN, answer }
}

/** The least total in which nothing has to come out. */
const leastTotal = (parts: readonly { grams: number; poured: number }[]): number =>
  Math.max(...parts.map(({ grams, poured }) => poured / grams)) *
  parts.reduce((sum, { grams }) => sum + grams, 0)

test('what is added brings every component to the same share, takes nothing out, and is the least that does', () => {
  fc.assert(
    fc.property(mix, (parts) => {
      const { of } = corrected(parts)
      const k = of('factor')
      const adds = parts.map((_, i) => of(`add t${i}`))
      for (const add of adds) expect(add).toBeGreaterThanOrEqual(0)
      const real = Math.max(1, ...parts.map(({ grams, poured }) => poured / grams))
      parts.forEach(({ grams, poured }, i) => {
        // The bench's own tolerance for a component.
        expect(Math.abs(poured + (adds[i] ?? 0) - k * grams)).toBeLessThan(0.05)
      })
      if (k > 1) {
        expect(k).toBeCloseTo(real, 9)
        expect(Math.min(...adds)).toBeCloseTo(0, 9)
        // With any less, something would have to come out.
        expect(parts.some(({ grams, poured }) => k * 0.999 * grams < poured)).toBe(true)
      }
    }),
    { numRuns: 2000 },
  )
})

test('a cup that is too small for any total says why, and what to pour off so that the rest fits it exactly', () => {
  fc.assert(
    fc.property(mix, fc.integer({ min: 1, max: 99 }), (parts, percent) => {
      const least = leastTotal(parts)
      fc.pre(least > 0)
      const cup = (least * percent) / 100
      const { of, answer } = corrected(parts, cup)
      if (answer.outcome !== 'result') throw new Error('It was refused.')
      expect(answer.verdict?.passes).toBe(false)
      expect(answer.warnings[0]).toMatch(/^No total fits/)
      const poured = parts.reduce((sum, part) => sum + part.poured, 0)
      const added = parts.reduce((sum, _, i) => sum + of(`then add t${i}`), 0)
      expect((poured - of('pour off') + added) / cup).toBeCloseTo(1, 9)
    }),
  )
})

test('a cup too small for the whole recipe takes the least total that is right, where nothing is over', () => {
  fc.assert(
    fc.property(mix, fc.integer({ min: 1, max: 99 }), (parts, percent) => {
      const whole = parts.reduce((sum, { grams }) => sum + grams, 0)
      const least = leastTotal(parts)
      fc.pre(least > 0 && least < whole)
      const cup = least + ((whole - least) * percent) / 100
      const { of, answer } = corrected(parts, cup)
      if (answer.outcome !== 'result') throw new Error('It was refused.')
      expect(answer.verdict?.passes).toBe(true)
      expect(of('total')).toBeCloseTo(least, 6)
      parts.forEach(({ grams, poured }, i) => {
        expect(of(`add t${i}`)).toBeGreaterThanOrEqual(0)
        expect(poured + of(`add t${i}`)).toBeCloseTo((least / whole) * grams, 6)
      })
    }),
  )
})

test('half of a recipe poured goes on as half of it; before the first pour the cup is filled', () => {
  const half = [
    { grams: 312.4, poured: 156.2 },
    { grams: 120, poured: 30 },
    { grams: 67.6, poured: 0 },
  ]
  const { of, answer } = corrected(half, 300)
  expect([0, 1, 2].map((i) => of(`add t${i}`))).toEqual([0, 30, 33.8])
  expect(answer).toMatchObject({
    verdict: { passes: true, words: expect.stringContaining('least total that fits is 250.0 g') },
  })
  const none = half.map(({ grams }) => ({ grams, poured: 0 }))
  expect(corrected(none, 250).of('add t0')).toBe(156.2)
})

test('less than half of the scale’s last figure over is none', () => {
  const { of } = corrected([
    { grams: 312.4, poured: 312.44 },
    { grams: 120, poured: 0 },
  ])
  expect(of('factor')).toBe(1)
  expect(of('add t0')).toBe(0)
})
