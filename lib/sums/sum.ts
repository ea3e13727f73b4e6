import type * as z from 'zod/mini'
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
}

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
  /** Works it. Pure; whatever comes in, it answers: a missing figure is named, never taken for zero. */
  readonly work: (raw: unknown) => Answer
}

/** A sum by its input's fields and how it is worked once they are well formed. */
export const defineSum = <S extends z.ZodMiniObject>(
  sum: About & { readonly input: S; readonly reckon: (input: z.output<S>) => Answer },
): Sum => {
  const { reckon, ...rest } = sum
  return {
    ...rest,
    work(raw) {
      const parsed = sum.input.safeParse(raw)
      return parsed.success
        ? reckon(parsed.data)
        : { outcome: 'refused', faults: faultsIn(parsed.error, sum.input) }
    },
  }
}

function faultsIn(error: z.core.$ZodError, input: z.ZodMiniObject): readonly Fault[] {
  return error.issues.map((issue) => {
    const field = issue.path.join('.')
    if (issue.code === 'unrecognized_keys')
      return fault(field || issue.keys.join(', '), `There is no field ${issue.keys.join(', ')}.`)
    return fault(
      field,
      `${labelAt(input, issue.path)}: ${missing(issue) ? 'missing. A blank is not zero.' : issue.message}`,
    )
  })
}

const missing = (issue: z.core.$ZodIssue): boolean =>
  issue.code === 'invalid_type' && (issue.input === undefined || issue.input === null)

/** What is wrong with a field. */
export const fault = (field: string, message: string): Fault => ({ field, message, ask: false })
/** What a person must say before a field can be used. */
export const ask = (field: string, message: string): Fault => ({ field, message, ask: true })
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
