import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { allSums, sumNamed } from './all-sums.ts'
import { fieldsOf, shownFigure } from './sum.ts'

type Field = ReturnType<typeof fieldsOf>[number]
type Described = Pick<Field, 'kind' | 'options' | 'optional'> & {
  readonly columns?: Field['columns']
}

/** Figures as they are typed on a bench, and some that nobody should type. */
const figures = fc.oneof(
  fc.constantFrom(0, 1, 2, 0.5, 4.5, 12, 20, 50, 60, 83, 100, 400, 3000, -1, -20, 1e9),
  fc.integer({ min: -50, max: 5000 }).map((tenths) => tenths / 10),
)
const texts = fc.constantFrom(
  '',
  'P400',
  '400',
  '08:10',
  '16:20',
  '7.40',
  '2026-03-28T22:00',
  'Europe/London',
  'psi',
  'bar',
  'gallon',
  'x',
)

function typed(field: Described): fc.Arbitrary<unknown> {
  const given: fc.Arbitrary<unknown> = {
    number: figures,
    numbers: fc.array(figures, { maxLength: 6 }),
    choice: fc.constantFrom(...field.options.map(({ value }) => value), 'none of them'),
    words: texts,
    rows: fc.array(fc.record(recordOf(field.columns ?? [])), { maxLength: 3 }),
  }[field.kind]
  return fc.oneof(
    { weight: field.optional ? 2 : 9, arbitrary: given },
    { weight: 1, arbitrary: fc.constant(undefined) },
  )
}
const recordOf = (fields: readonly (Described & { readonly name: string })[]) =>
  Object.fromEntries(fields.map((field) => [field.name, typed(field)]))

describe('every sum of the bench', () => {
  it('has a name of its own, in lower case with hyphens', () => {
    expect(new Set(allSums.map(({ name }) => name)).size).toBe(allSums.length)
    for (const { name } of allSums) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/)
      expect(sumNamed(name)?.name).toBe(name)
    }
  })

  it.each(allSums)(
    '$name answers whatever is typed: with finite figures, or a field and the way out',
    (sum) => {
      const input = fc.record(recordOf(fieldsOf(sum)))
      fc.assert(
        fc.property(input, (raw) => {
          const answer = sum.work(raw)
          if (answer.outcome === 'refused') {
            expect(answer.faults.length).toBeGreaterThan(0)
            for (const { message } of answer.faults) expect(message).toMatch(/\S/)
          } else {
            for (const figure of answer.figures)
              expect(shownFigure(figure)).not.toMatch(/NaN|Infinity|undefined/)
          }
        }),
        { numRuns: 200 },
      )
    },
  )

  it.each(allSums)('$name works the same twice', (sum) => {
    const input = fc.record(recordOf(fieldsOf(sum)))
    fc.assert(
      fc.property(input, (raw) => {
        expect(sum.work(raw)).toEqual(sum.work(raw))
      }),
      { numRuns: 20 },
    )
  })
})
