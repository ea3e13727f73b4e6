import * as z from 'zod/mini'
import { type Doubt, doubtOf, fieldsOf } from './fields.ts'
import { said } from './limits.ts'
import { ask, refused, refusedAll } from './outcome.ts'
import type { Sum, SumOutcome } from './sum.ts'

/** Whether the person has said that the figure of a field is meant as typed. */
export type Meant = (field: string) => boolean

interface Written<Shape extends z.core.$ZodShape> extends Omit<Sum, 'fields' | 'work'> {
  readonly input: z.ZodMiniObject<Shape>
  /** Works with what was parsed: blanks are undefined, limits hold. */
  readonly reckon: (input: z.output<z.ZodMiniObject<Shape>>, meant: Meant) => SumOutcome
}

const Fields = z.record(z.string(), z.unknown())
const FieldNames = z.catch(z.array(z.string()), [])

/**
 * A sum out of its fields and its reckoning: asks about what is odd, refuses what is missing or out of limits, then
 * reckons. Beside its fields the input may hold `meant`, the names of those whose odd figure is meant as typed.
 */
export function defineSum<Shape extends z.core.$ZodShape>(written: Written<Shape>): Sum {
  const { input, reckon, ...about } = written
  const shape: z.core.$ZodShape = input.shape
  return {
    ...about,
    fields: fieldsOf(shape),
    work(raw) {
      const read = Fields.safeParse(withoutBlanks(raw))
      if (!read.success) return refused('', 'The input is a set of fields, each by its name.')
      const given = read.data
      const meant = FieldNames.parse(given.meant)
      const strange = Object.keys(given).filter(
        (key) => key !== 'meant' && !Object.hasOwn(shape, key),
      )
      if (strange.length > 0)
        return refusedAll(
          strange.map((key) => [
            key,
            `There is no field called ${key} here, but ${Object.keys(shape).join(', ')}.`,
          ]),
        )
      for (const [name, schema] of Object.entries(shape)) {
        const doubt = meant.includes(name) ? null : doubtOf(schema, given[name])
        if (doubt !== null) return asked(name, doubt, meant)
      }
      const parsed = input.safeParse(given)
      return parsed.success
        ? reckon(parsed.data, (name) => meant.includes(name))
        : refusedAll(
            parsed.error.issues.map(({ path, message }) => [path.map(String).join('.'), message]),
          )
    },
  }
}

function asked(name: string, { question, instead }: Doubt, meant: readonly string[]) {
  return ask(name, question, [
    ...instead.map((quantity) => ({ says: said(quantity), set: { [name]: quantity } })),
    { says: 'It is as typed', set: { meant: [...meant, name] } },
  ])
}

/** An empty text and a null are what a form and a script write where nothing was typed: nothing. */
function withoutBlanks(raw: unknown): unknown {
  if (Array.isArray(raw)) return raw.map((each) => withoutBlanks(each))
  if (typeof raw !== 'object' || raw === null) return raw
  return Object.fromEntries(
    Object.entries(raw)
      .filter(([, value]) => value !== null && value !== '')
      .map(([key, value]) => [key, withoutBlanks(value)]),
  )
}
