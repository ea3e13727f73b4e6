import * as z from 'zod/mini'
import type { Hazard } from '../record/entities/work.ts'
import { toPlaces } from './decimal.ts'
import { fieldMeta, labelAt } from './fields.ts'

/** One figure of a result: `value` at full precision, shown to `places`. Words where it is none. */
export interface Figure {
  readonly name: string
  readonly label: string
  readonly value: number | string
  readonly unit: string
  readonly places: number
}

/** What is wrong with one field and the way out; `ask`: it may be right, and a person has to say which is meant. */
export interface Fault {
  readonly field: string
  readonly message: string
  readonly ask: boolean
  /** What may be answered: `set` is laid over the input, and the sum is worked again. */
  readonly answers: readonly FaultAnswer[]
}

/** One answer to what is asked. */
export interface FaultAnswer {
  readonly words: string
  readonly set: { readonly [field: string]: unknown }
}

/** Whether the person has said that the odd figure of a field is meant as it is typed. */
export type Meant = (field: string) => boolean

/** What a sum comes to, or why it can't be worked. A verdict is made on full precision. */
export type Answer =
  | {
      readonly outcome: 'result'
      readonly figures: readonly Figure[]
      readonly verdict: { readonly passes: boolean; readonly words: string } | null
      /** The formula with its figures in, line by line. */
      readonly working: readonly string[]
      readonly warnings: readonly string[]
    }
  | { readonly outcome: 'refused'; readonly faults: readonly Fault[] }

/** Where a sum belongs on the shelf. */
export const groups = [
  'paint',
  'engine',
  'bolts',
  'electrics',
  'running gear',
  'panels',
  'trim',
  'money and hours',
  'units',
] as const
/** Name of a shelf. */
export type Group = (typeof groups)[number]

/** What is said of a sum besides how it is worked. */
export interface About {
  /** In lower case with hyphens, as the command line takes it. */
  readonly name: string
  readonly title: string
  readonly group: Group
  readonly formula: string
  /** Where formula and figures are from, and how that stands: read, from memory, common practice. */
  readonly source: string
  readonly tolerance: string
  readonly hazards: readonly Hazard[]
}

/** A sum of the bench. */
export interface Sum extends About {
  readonly input: z.ZodMiniObject
  /**
   * Works it. Pure; whatever comes in, it answers: a missing figure is named, never taken for zero. Beside its fields
   * the input may hold `meant`, the names of those whose odd figures are meant as they are.
   */
  readonly work: (raw: unknown) => Answer
}

/** A sum by its input's fields and how it is worked once they are well formed. */
export const defineSum = <S extends z.ZodMiniObject>(
  sum: About & { readonly input: S; readonly reckon: (input: z.output<S>, meant: Meant) => Answer },
): Sum => {
  const { reckon, ...rest } = sum
  return {
    ...rest,
    work(raw) {
      const { input, meant } = apart(raw)
      const parsed = sum.input.safeParse(input, { reportInput: true })
      if (!parsed.success) return { outcome: 'refused', faults: faultsIn(parsed.error, sum.input) }
      const answer = reckon(parsed.data, (field) => meant.includes(field))
      return answer.outcome === 'result'
        ? answer
        : { ...answer, faults: answer.faults.map((one) => withEarlier(one, meant)) }
    },
  }
}

const Fields = z.record(z.string(), z.unknown())
const Names = z.catch(z.array(z.string()), [])

/** What is typed, apart from what was said of it. A text of nothing is what a form and a script write for a blank. */
function apart(raw: unknown): { readonly input: unknown; readonly meant: readonly string[] } {
  const read = Fields.safeParse(raw)
  if (!read.success) return { input: raw, meant: [] }
  const { meant, ...fields } = read.data
  const typed = Object.entries(fields).filter(([, value]) => value !== '' && value !== null)
  return { input: Object.fromEntries(typed), meant: Names.parse(meant) }
}

/** An answer keeps what was answered before. */
const withEarlier = (one: Fault, earlier: readonly string[]): Fault => ({
  ...one,
  answers: one.answers.map(({ words, set }) => ({
    words,
    set: 'meant' in set ? { ...set, meant: [...earlier, ...Names.parse(set.meant)] } : set,
  })),
})

function faultsIn(error: z.core.$ZodError, input: z.ZodMiniObject): readonly Fault[] {
  return error.issues.map((issue) => {
    const field = issue.path.join('.')
    if (issue.code === 'unrecognized_keys')
      return fault(field || issue.keys.join(', '), `There is no field ${issue.keys.join(', ')}.`)
    return fault(
      field,
      `${labelAt(input, issue.path)}: ${missing(issue) ? blank(issue) : issue.message}`,
    )
  })
}

const blank = (issue: z.core.$ZodIssue): string =>
  issue.code === 'invalid_value'
    ? `not chosen, and not guessed: ${issue.values.join(', ')}.`
    : 'missing. A blank is not zero.'

const missing = (issue: z.core.$ZodIssue): boolean =>
  (issue.code === 'invalid_type' || issue.code === 'invalid_value') &&
  (issue.input === undefined || issue.input === null || issue.input === '')

/** What is wrong with a field. */
export const fault = (field: string, message: string): Fault => ({
  field,
  message,
  ask: false,
  answers: [],
})
/** What a person must say before a field can be used, and what they may answer, if that can be said in a press. */
export const ask = (
  field: string,
  message: string,
  answers: readonly FaultAnswer[] = [],
): Fault => ({ field, message, ask: true, answers })
/** The answer that an odd figure is meant as it is typed. */
export const asTyped = (field: string, words = 'It is as typed'): FaultAnswer => ({
  words,
  set: { meant: [field] },
})
/** It can't be worked for that. */
export const refuse = (...faults: readonly Fault[]): Answer => ({ outcome: 'refused', faults })

/** A figure of a result. */
export const figure = (
  name: string,
  label: string,
  value: number | string,
  unit = '',
  places = 2,
): Figure => ({ name, label, value, unit, places })

/** What it comes to. */
export const result = (
  figures: readonly Figure[],
  more: {
    readonly verdict?: { readonly passes: boolean; readonly words: string } | null
    readonly working?: readonly string[]
    readonly warnings?: readonly string[]
  } = {},
): Answer => ({
  outcome: 'result',
  figures,
  verdict: more.verdict ?? null,
  working: more.working ?? [],
  warnings: more.warnings ?? [],
})

/** A figure as it is shown, without its unit: to its places, halves away from zero. */
export const shownFigure = ({ value, places }: Figure): string =>
  typeof value === 'string' ? value : toPlaces(value, places)

/** The fields of a sum's input, in order, for a screen or a list. */
export const fieldsOf = (sum: Sum): readonly (ReturnType<typeof fieldMeta> & { name: string })[] =>
  Object.entries(sum.input.shape).map(([name, field]) => ({ name, ...fieldMeta(field) }))
