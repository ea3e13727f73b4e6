import * as z from 'zod/mini'

/** What a screen says of a field. */
export interface Meta {
  readonly kind: 'number' | 'numbers' | 'choice' | 'words' | 'rows'
  readonly label: string
  readonly unit: string
  readonly help: string
  /** Of a choice: what may be chosen, in words. */
  readonly options: readonly { readonly value: string; readonly label: string }[]
  /** Of words: what is offered while they are typed. */
  readonly suggest: readonly string[]
}
const metas = z.registry<Meta>()
const none = { unit: '', help: '', options: [], suggest: [] }

/** Least and greatest are inclusive; `above` is not. */
export interface Limits {
  readonly least?: number
  readonly greatest?: number
  readonly above?: number
  readonly help?: string
}

/** A figure in a unit, within limits beyond which the sum has no meaning. */
export function measure(label: string, unit: string, limits: Limits = {}) {
  const { least, greatest, above, help = '' } = limits
  const words = within(unit, limits)
  const checks = [
    ...(least === undefined ? [] : [z.minimum(least, words)]),
    ...(greatest === undefined ? [] : [z.maximum(greatest, words)]),
    ...(above === undefined ? [] : [z.gt(above, words)]),
  ]
  return z
    .number(`a number${unit === '' ? '' : ` in ${unit}`}, such as 12.5`)
    .check(...checks)
    .register(metas, { ...none, kind: 'number', label, unit, help })
}

/** Several figures in one unit. */
export function measures(
  label: string,
  unit: string,
  limits: Limits & { readonly count?: number } = {},
) {
  const { help = '', count = 1 } = limits
  return z
    .array(measure(label, unit, limits))
    .check(
      z.minLength(count, `at least ${count} ${count === 1 ? 'figure' : 'figures'}`),
      z.maxLength(500),
    )
    .register(metas, { ...none, kind: 'numbers', label, unit, help })
}

/** One of a few, never chosen beforehand. */
export const choice = <const T extends readonly [string, ...string[]]>(
  label: string,
  values: T,
  words: { readonly [V in T[number]]: string },
  help = '',
) => {
  // A record puts keys that are whole numbers first; the choice stands in the order given.
  const inOrder: readonly T[number][] = values
  return z.enum(values, `one of ${values.join(', ')}`).register(metas, {
    ...none,
    kind: 'choice',
    label,
    help,
    options: inOrder.map((value) => ({ value, label: words[value] })),
  })
}

/** A few words or a name. */
export const words = (label: string, help = '', suggest: readonly string[] = []) =>
  z
    .string('words')
    .check(z.minLength(1, 'missing. Say which.'), z.maxLength(120))
    .register(metas, { ...none, kind: 'words', label, help, suggest })

/** Rows of a table. */
export const rows = <S extends z.ZodMiniObject>(label: string, row: S, help = '') =>
  z
    .array(row)
    .check(z.minLength(1, 'at least one row'), z.maxLength(200))
    .register(metas, { ...none, kind: 'rows', label, help })

function within(unit: string, { least, greatest, above }: Limits): string {
  const of = unit === '' ? '' : ` ${unit}`
  if (above !== undefined && greatest !== undefined)
    return `above ${above} and up to ${greatest}${of}`
  if (above !== undefined) return `above ${above}${of}`
  if (least !== undefined && greatest !== undefined) return `${least} to ${greatest}${of}`
  if (least !== undefined) return `${least}${of} or more`
  return `${greatest}${of} or less`
}

const inner = (field: unknown): unknown =>
  field instanceof z.ZodMiniOptional ? field.def.innerType : field

/** What is said of a field of an input, and its columns where it is a table. */
export function fieldMeta(field: unknown): Meta & {
  readonly optional: boolean
  readonly columns: readonly (Meta & { readonly name: string; readonly optional: boolean })[]
} {
  const own = inner(field)
  const meta = own instanceof z.ZodMiniType ? metas.get(own) : undefined
  if (meta === undefined) throw new Error('A field of a sum has no label.')
  const row = own instanceof z.ZodMiniArray ? own.def.element : undefined
  return {
    ...meta,
    optional: own !== field,
    columns:
      row instanceof z.ZodMiniObject
        ? Object.entries(row.shape).map(([name, column]) => {
            const { columns: _, ...rest } = fieldMeta(column)
            return { name, ...rest }
          })
        : [],
  }
}

/** The label of what lies at that path of an input: `Recipe, row 2, Grams`. */
export function labelAt(input: z.ZodMiniObject, path: readonly PropertyKey[]): string {
  const [first, row, column] = path
  const field = Object.entries(input.shape).find(([name]) => name === first)?.[1]
  if (field === undefined) return String(first ?? 'The input')
  const { label, columns } = fieldMeta(field)
  if (typeof row !== 'number') return label
  const under = columns.find(({ name }) => name === column)?.label
  return `${label}, ${under === undefined ? 'figure' : 'row'} ${row + 1}${under === undefined ? '' : `, ${under}`}`
}
