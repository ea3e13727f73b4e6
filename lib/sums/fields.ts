import * as z from 'zod/mini'
import { type Limits, outOf, type Quantity } from './limits.ts'
import { type Unit, unitShown } from './units.ts'

/** A figure that is likely something else: what is asked, and what it may be instead. */
export interface Doubt {
  readonly question: string
  readonly instead: readonly Quantity[]
}

interface Described {
  readonly label: string
  readonly help: string
}

/** What script and screen know of a field. */
export type FieldInfo = { readonly name: string; readonly required: boolean } & FieldKind

/** `quantity`: a number or `{ value, unit }`; `quantities`: a list of numbers or `{ values, unit }`; `rows`: a list of objects. */
export type FieldKind = Described &
  (
    | {
        readonly kind: 'quantity' | 'quantities'
        readonly units: readonly [Unit, ...Unit[]]
        readonly limits: Limits
      }
    | { readonly kind: 'choice'; readonly options: readonly ChoiceOption[] }
    | { readonly kind: 'text' }
    | { readonly kind: 'yes or no' }
    | { readonly kind: 'rows'; readonly columns: readonly FieldInfo[] }
  )

export interface ChoiceOption {
  readonly value: string
  readonly label: string
}

interface Registered {
  readonly field: FieldKind
  readonly required: boolean
  readonly doubt: ((given: Quantity) => Doubt | null) | null
}

const registry = z.registry<Registered>()

interface QuantityOptions extends Limits {
  readonly help?: string
  /** Asked before the limits are: what the figure may be instead, or null where nothing is odd about it. */
  readonly doubt?: (given: Quantity) => Doubt | null
}

type Units = readonly [Unit, ...Unit[]]

const missing = (input: unknown): boolean => input === undefined || input === null || input === ''

const inOneOf = (units: Units): string =>
  units.length === 1
    ? ` in ${unitShown(units[0]) || 'figures'}`
    : `, or with its unit, one of ${units.join(', ')}`

/** A number in one of these units; a bare number is in the first. Limits are in the first, and hold exactly in each. */
export function quantity(label: string, units: Units, options: QuantityOptions = {}) {
  const { help = '', doubt, ...limits } = options
  return z
    .pipe(
      z.union([z.number(), withUnit(units)], {
        error: ({ input }) =>
          missing(input)
            ? `${label} is missing. A blank is not nought: type the figure.`
            : `${label} is a number${inOneOf(units)}.`,
      }),
      z.transform((given) =>
        typeof given === 'number' ? { value: given, unit: units[0] } : given,
      ),
    )
    .check(
      z.superRefine((given, context) => {
        const why = outOf(given, units[0], limits)
        if (why !== null) context.addIssue({ code: 'custom', message: `${label}: ${why}` })
      }),
    )
    .register(registry, {
      field: { kind: 'quantity', label, help, units, limits },
      required: true,
      doubt: doubt ?? null,
    })
}

/** Several numbers in one unit: a list, or `{ values, unit }`. */
export function quantities(
  label: string,
  units: Units,
  options: Omit<QuantityOptions, 'doubt'> & { readonly atLeast?: number } = {},
) {
  const { help = '', atLeast = 1, ...limits } = options
  return z
    .pipe(
      z.union(
        [z.array(z.number()), z.object({ values: z.array(z.number()), unit: z.enum(units) })],
        {
          error: ({ input }) =>
            missing(input)
              ? `${label} are missing: type each figure.`
              : `${label} are a list of numbers, none of them blank${inOneOf(units)}.`,
        },
      ),
      z.transform((given): readonly Quantity[] =>
        'unit' in given
          ? given.values.map((value) => ({ value, unit: given.unit }))
          : given.map((value) => ({ value, unit: units[0] })),
      ),
    )
    .check(
      z.refine((all) => all.length >= atLeast, `${label}: at least ${atLeast} are needed.`),
      z.superRefine((all, context) => {
        all.forEach((given, index) => {
          const why = outOf(given, units[0], limits)
          if (why !== null)
            context.addIssue({
              code: 'custom',
              path: [index],
              message: `${label}, number ${index + 1}: ${why}`,
            })
        })
      }),
    )
    .register(registry, {
      field: { kind: 'quantities', label, help, units, limits },
      required: true,
      doubt: null,
    })
}

const withUnit = (units: Units) => z.object({ value: z.number(), unit: z.enum(units) })

/** One of these, never guessed: it has no default. */
export function choice<const Value extends string>(
  label: string,
  options: Readonly<Record<Value, string>>,
  help = '',
) {
  const values = Object.keys(options).filter((key): key is Value => Object.hasOwn(options, key))
  return z
    .enum(values, {
      error: ({ input }) =>
        missing(input)
          ? `${label} is not chosen, and is not guessed: ${values.join(' or ')}.`
          : `${label} is one of: ${values.join(', ')}.`,
    })
    .register(registry, {
      field: {
        kind: 'choice',
        label,
        help,
        options: values.map((value) => ({ value, label: options[value] })),
      },
      required: true,
      doubt: null,
    })
}

/** Some words: a name, a grade. */
export const text = (label: string, help = '') =>
  z
    .string({ error: `${label} is missing.` })
    .check(
      z.refine((words) => /\S/.test(words), { error: `${label} is missing.` }),
      z.maxLength(200, `${label} has at most 200 letters.`),
    )
    .register(registry, { field: { kind: 'text', label, help }, required: true, doubt: null })

/** Yes or no, answered. */
export const yesOrNo = (label: string, help = '') =>
  z.boolean({ error: `${label}: answer yes or no.` }).register(registry, {
    field: { kind: 'yes or no', label, help },
    required: true,
    doubt: null,
  })

/** A table that is filled row by row. */
export function rows<Shape extends z.core.$ZodShape>(label: string, row: Shape, help = '') {
  return z
    .array(z.object(row), { error: `${label} is missing: add a row.` })
    .check(z.minLength(1, `${label} is empty: add a row.`))
    .register(registry, {
      field: { kind: 'rows', label, help, columns: fieldsOf(row) },
      required: true,
      doubt: null,
    })
}

/** A field that may stay blank; it is then undefined, never nought. */
export function maybe<Inner extends z.core.$ZodType>(inner: Inner) {
  const known = registry.get(inner)
  const outer = z.optional(inner)
  if (known !== undefined) registry.add(outer, { ...known, required: false })
  return outer
}

/** The fields of a set of schemas made here, in their order. */
export const fieldsOf = (shape: z.core.$ZodShape): readonly FieldInfo[] =>
  Object.entries(shape).flatMap(([name, schema]) => {
    const known = registry.get(schema)
    return known === undefined ? [] : [{ name, required: known.required, ...known.field }]
  })

/** What is odd about a field's figure, if it is a figure and that field has such a question. */
export function doubtOf(schema: z.core.$ZodType, raw: unknown): Doubt | null {
  const known = registry.get(schema)
  if (known === undefined || known.doubt === null || known.field.kind !== 'quantity') return null
  const { units } = known.field
  if (typeof raw === 'number') return known.doubt({ value: raw, unit: units[0] })
  const given = withUnit(units).safeParse(raw)
  return given.success ? known.doubt(given.data) : null
}
