import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { choice, measure } from './fields.ts'
import { ask, asTyped, defineSum, figure, refuse, result } from './sum.ts'

const odd = defineSum({
  name: 'odd',
  title: 'Odd',
  group: 'units',
  formula: 'a',
  source: 'arithmetic',
  tolerance: 'exact',
  hazards: [],
  input: z.strictObject({
    a: measure('First', 'mm'),
    b: measure('Second', 'mm'),
    how: choice('How', ['up', 'down'], { up: 'Up', down: 'Down' }),
  }),
  reckon({ a, b }, meant) {
    const doubts = Object.entries({ a, b }).filter(([field, value]) => value < 1 && !meant(field))
    return doubts.length > 0
      ? refuse(...doubts.map(([field]) => ask(field, 'Is that so?', [asTyped(field)])))
      : result([figure('a', 'First', a)])
  },
})

describe('what a sum is given', () => {
  it('is asked about where it is odd, and worked once the person has answered for each field', () => {
    const input = { a: 0.5, b: 0.6, how: 'up' }
    const first = odd.work(input)
    expect(first).toMatchObject({ faults: [{ field: 'a', ask: true }, { field: 'b' }] })
    const said = first.outcome === 'refused' ? first.faults[0]?.answers[0]?.set : {}
    const second = odd.work({ ...input, ...said })
    expect(second).toMatchObject({
      faults: [{ field: 'b', answers: [{ set: { meant: ['a', 'b'] } }] }],
    })
    expect(odd.work({ ...input, meant: ['a', 'b'] })).toMatchObject({ outcome: 'result' })
  })

  it('is missing where it is blank, and no number where it is a word', () => {
    expect(odd.work({ a: '', b: 'two', how: null })).toMatchObject({
      faults: [
        { field: 'a', message: 'First: missing. A blank is not zero.' },
        { field: 'b', message: 'Second: a number in mm, such as 12.5' },
        { field: 'how', message: 'How: not chosen, and not guessed: up, down.' },
      ],
    })
  })

  it('is answered whatever it is', () => {
    for (const raw of [null, undefined, 7, 'x', [], { meant: 7 }, { toString: 1 }])
      expect(odd.work(raw).outcome).toBe('refused')
  })
})
