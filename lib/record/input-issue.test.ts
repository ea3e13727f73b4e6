import { describe, expect, it } from 'vitest'
import * as z from 'zod/mini'
import { inputIssues } from './input-issue.ts'
import { CivilDate, Line } from './scalars.ts'

const Input = z.strictObject({
  name: Line,
  year: z.int().check(z.minimum(1885), z.maximum(2100)),
  by: CivilDate,
  role: z.enum(['hand', 'manager']),
})
const good = { name: 'Calder', year: 1954, by: '2026-11-25', role: 'hand' }
const said = (over: object) => {
  const { error } = Input.safeParse({ ...good, ...over })
  return error === undefined ? [] : inputIssues(error)
}

describe('what is wrong with an input', () => {
  it.each([
    ['name', 'x'.repeat(400), 'at most 200 letters'],
    ['name', '  ', 'at least one letter'],
    ['name', 7, 'some words'],
    ['year', 20655, 'at most 2100'],
    ['year', 12, 'at least 1885'],
    ['year', 1954.5, 'a whole number'],
    ['by', 'soon', 'a day such as 2026-11-25'],
    ['role', 'king', 'one of: hand, manager'],
  ])('says what should stand there: %s', (field, value, message) => {
    expect(said({ [field]: value })).toEqual([{ field, message }])
  })

  it('names a field that nobody asked for', () => {
    expect(said({ colour: 'ivory' })).toEqual([{ field: '', message: 'nothing called colour' }])
  })
})
