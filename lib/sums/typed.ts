import { labelAt } from './fields.ts'
import { type Answer, fieldsOf, type Sum } from './sum.ts'
import { readTypedNumber } from './typed-number.ts'
import { convert, isUnit, unitsLike } from './units.ts'

/**
 * What stands typed in the fields of a sum: `air`, `recipe.0.grams`; beside a figure, or for all figures of a table, the unit it is typed
 * in (`air unit`), where that is not the field's own; `recipe rows` counts the rows of a table. `meant` names the fields whose odd figures are
 * meant as typed.
 */
export type Typed = { readonly [key: string]: string }

/** What is wrong with one field; `answers` are what may have been meant, each laid over what is typed. */
export interface TypedFault {
  readonly key: string
  readonly message: string
  readonly answers: readonly { readonly says: string; readonly typed: Typed }[]
}

/** A sum worked with what is typed: its result, or what is still to type and what is wrong. */
export interface Worked {
  readonly result: Extract<Answer, { readonly outcome: 'result' }> | null
  /** Labels of fields that are blank and must not be. */
  readonly toType: readonly string[]
  readonly wrong: readonly TypedFault[]
}

type Field = ReturnType<typeof fieldsOf>[number]
type Column = Field['columns'][number]

/** How many rows of a table stand there to be filled. */
export const rowsOf = (typed: Typed, field: string): number =>
  Math.max(1, Number(typed[`${field} rows`] ?? 1) || 1)

/** What is typed, without that row; those after it move up. */
export function withoutRow(typed: Typed, field: string, row: number): Typed {
  const kept = Object.entries(typed).flatMap(([key, text]): [string, string][] => {
    const [of, at, ...column] = key.split('.')
    if (of !== field || at === undefined) return [[key, text]]
    if (Number(at) === row) return []
    return [[[of, Number(at) > row ? Number(at) - 1 : at, ...column].join('.'), text]]
  })
  return { ...Object.fromEntries(kept), [`${field} rows`]: String(rowsOf(typed, field) - 1) }
}

/** What is typed once a field is typed anew: what was said of its odd figure before is said no more. */
export const typedAnew = (typed: Typed, key: string, text: string): Typed => ({
  ...typed,
  [key]: text,
  meant: meantIn(typed)
    .filter((field) => field !== key)
    .join(' '),
})

/** What every sum says of a blank, also where only that sum knows that it is needed. */
const BLANK = /A blank is not zero/

const meantIn = (typed: Typed): readonly string[] =>
  (typed.meant ?? '').split(' ').filter((field) => field !== '')

/** An answer as one would type it: its figures are in the fields' own units. */
function asTyped(set: { readonly [field: string]: unknown }, decimal: '.' | ','): Typed {
  const text = (value: unknown): string =>
    typeof value === 'number' ? String(value).replace('.', decimal) : String(value ?? '')
  return Object.fromEntries(
    Object.entries(set).flatMap(([field, value]): [string, string][] => {
      if (!Array.isArray(value))
        return typeof value === 'number'
          ? [
              [field, text(value)],
              [`${field} unit`, ''],
            ]
          : [[field, text(value)]]
      const rows = value.filter((row) => typeof row === 'object' && row !== null)
      if (rows.length === 0) return [[field, value.map(text).join(' ')]]
      return [
        [`${field} rows`, String(rows.length)],
        [`${field} unit`, ''],
        ...rows.flatMap((row, at) =>
          Object.entries(row).map(([column, cell]): [string, string] => [
            `${field}.${at}.${column}`,
            Array.isArray(cell) ? cell.map(text).join(' ') : text(cell),
          ]),
        ),
      ]
    }),
  )
}

/** Works a sum with what is typed in the reader's language. Rows that are blank all along count for nothing. */
export function workTyped(sum: Sum, typed: Typed, decimal: '.' | ','): Worked {
  const unread: TypedFault[] = []
  const input: { [field: string]: unknown } = {}
  const filled = new Map<string, readonly number[]>()
  const fields = fieldsOf(sum)
  for (const field of fields) {
    if (field.kind !== 'rows') {
      const value = inputAt(field, field.name, field.name)
      if (value !== undefined) input[field.name] = value
      continue
    }
    const rows = [...Array(rowsOf(typed, field.name)).keys()].filter((row) =>
      field.columns.some(({ name }) => textAt(`${field.name}.${row}.${name}`) !== ''),
    )
    filled.set(field.name, rows)
    input[field.name] = rows.map((row) =>
      Object.fromEntries(
        field.columns.flatMap((column) => {
          const value = inputAt(column, `${field.name}.${row}.${column.name}`, field.name)
          return value === undefined ? [] : [[column.name, value]]
        }),
      ),
    )
  }
  if (unread.length > 0) return { result: null, toType: [], wrong: unread }
  const answer = sum.work({ ...input, meant: meantIn(typed) })
  if (answer.outcome === 'result') return { result: answer, toType: [], wrong: [] }
  const faults = answer.faults.map((fault) => ({
    ...fault,
    ...placeOf(fault.field, fault.message),
  }))
  return {
    result: null,
    toType: faults.flatMap(({ blank, label }) => (blank ? [label] : [])),
    wrong: faults.flatMap(({ blank, key, message, answers }) =>
      blank
        ? []
        : [
            {
              key,
              message,
              answers: answers.map(({ words, set }) => ({
                says: words,
                typed: asTyped(set, decimal),
              })),
            },
          ],
    ),
  }

  function textAt(key: string): string {
    return typed[key]?.trim() ?? ''
  }

  function inputAt(meta: Field | Column, key: string, unitOf: string): unknown {
    const text = textAt(key)
    if (text === '') return undefined
    if (meta.kind === 'number') return numberIn(text, meta, key, unitOf)
    if (meta.kind !== 'numbers') return text
    return text
      .split(/[\s/;]+|,\s+/)
      .filter((each) => each !== '')
      .map((each) => numberIn(each, meta, key, unitOf))
  }

  function numberIn(text: string, meta: Field | Column, key: string, unitOf: string): number {
    const read = readTypedNumber(text, decimal)
    if (read.is === 'number') {
      const own = typed[`${unitOf} unit`]
      return own !== undefined &&
        isUnit(own) &&
        isUnit(meta.unit) &&
        unitsLike(meta.unit).includes(own)
        ? convert(read.value, own, meta.unit)
        : read.value
    }
    const each = meta.kind === 'numbers'
    unread.push({
      key,
      message:
        read.is === 'doubtful'
          ? `${meta.label}: “${text}” is not guessed at. Which is meant?`
          : `${meta.label}: type ${each ? 'figures alone, such as 98 104 101' : 'the figure alone, such as 12.5'}; “${text}” is none.`,
      answers:
        read.is === 'doubtful'
          ? read.meant.map((says) => ({
              says,
              typed: { [key]: each ? textAt(key).replace(text, says) : says },
            }))
          : [],
    })
    return Number.NaN
  }

  /** Where a fault of the input stands among what is typed, and whether nothing is typed there that must be. */
  function placeOf(path: string, message: string) {
    const [name = '', at, column] = path.split('.')
    const field = fields.find((one) => one.name === name)
    const row = at === undefined ? undefined : (filled.get(name)?.[Number(at)] ?? Number(at))
    const isRow = field?.kind === 'rows'
    const key = isRow && row !== undefined ? [name, row, column].join('.') : name
    const meta =
      isRow && column !== undefined ? field.columns.find((one) => one.name === column) : field
    const blank = isRow && row === undefined ? filled.get(name)?.length === 0 : textAt(key) === ''
    const label =
      isRow && row !== undefined
        ? labelAt(sum.input, [name, row, column ?? ''])
        : (field?.label ?? path)
    return { key, label, blank: blank && (meta?.optional === false || BLANK.test(message)) }
  }
}
