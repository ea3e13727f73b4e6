import type { CommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import type { Entity } from '../record/entity.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { CivilDate, Instant, type Minor } from '../record/scalars.ts'
import { day, moment } from './dates.ts'
import { label } from './labels.ts'
import { figure, money, taxRate } from './money.ts'
import { entityName } from './names.ts'
import type { Place, Reader } from './reader.ts'

const isObject = (input: Json): input is { readonly [field: string]: Json } =>
  typeof input === 'object' && input !== null && !Array.isArray(input)

const ID = /^[a-z]{3}_[0-9a-z]{1,48}$/

/** What a press does and to what, for whoever no longer sees the button: *Start 41 · 41 Engine in*. */
export function pressLine(name: CommandName, input: Json, record: ProjectRecord | null): string {
  const about = isObject(input)
    ? Object.values(input).find((value) => typeof value === 'string' && ID.test(value))
    : undefined
  if (record === null || typeof about !== 'string') return label(name)
  const stage = record.stages.rows.get(about)
  // Its number stands on the button.
  const thing = stage?.name ?? entityName(about, record)
  const does = label(name, { name: thing, number: stage?.number, handoverTo: stage?.handoverTo })
  return thing === 'it' || does.includes(thing) ? does : `${does} · ${thing}`
}

/** A line of what was entered. */
export interface InputLine {
  readonly field: string
  readonly value: string
}

type SumField<E> = E extends unknown
  ? { [Field in keyof E]: [E[Field]] extends [Minor | null] ? Field : never }[keyof E]
  : never

/** Fields that hold sums: one of an entity that is left out here won't compile. */
const SUMS = {
  net: true,
  price: true,
  standingConsentEach: true,
  standingConsentTotal: true,
  unitPrice: true,
} satisfies { readonly [Field in SumField<Entity>]: true }

/** What a field is called where its own name would tell a person nothing. */
const SAID = new Map([
  ['text', 'words'],
  ['value', 'reading'],
  ['files', 'photos and papers'],
  ['net', 'price'],
  ['sharing', 'read by'],
])
/** Who reads a note. */
const READ_BY = new Map([
  ['shared', 'the other parties too'],
  ['shop', 'your own shop alone'],
])
/** What was seen or drawn, not typed: nobody can read it back. */
const NOT_TYPED: ReadonlySet<string> = new Set(['shownHash', 'signature'])

/** *standingConsentEach* as a person reads it: *standing consent each*. */
const fieldWords = (field: string): string =>
  SAID.get(field) ?? field.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

/** A reading as it was typed may have more places than one that is shown with its limits. */
const PLACES_MOST = 9

function valueWords(field: string, value: string | number, reader: InputReader): string {
  if (typeof value === 'number') {
    if (field in SUMS) return money(value, reader.currency, reader.locale)
    if (field === 'taxRate') return taxRate(value, reader.locale)
    return figure(value, reader.locale, PLACES_MOST)
  }
  if (field === 'sharing') return READ_BY.get(value) ?? value
  const instant = Instant.safeParse(value)
  if (instant.success) return moment(instant.data, reader)
  const date = CivilDate.safeParse(value)
  return date.success ? day(date.data, reader) : value
}

/** Where what was entered is read, and in which money. */
export type InputReader = Place & Pick<Reader, 'currency'>

/** What was typed or chosen, line by line: without ids, which name what the press is about, and with files counted. */
export function inputLines(input: Json, reader: InputReader): readonly InputLine[] {
  if (!isObject(input)) return []
  return Object.entries(input).flatMap(([name, value]): readonly InputLine[] => {
    if (NOT_TYPED.has(name)) return []
    const field = fieldWords(name)
    if (Array.isArray(value)) {
      if (name === 'files')
        return value.length === 0 ? [] : [{ field, value: String(value.length) }]
      return value.flatMap((one) => inputLines(isObject(one) ? one : { [name]: one }, reader))
    }
    if (isObject(value)) return inputLines(value, reader)
    if (value === true) return [{ field, value: 'yes' }]
    if (typeof value !== 'string' && typeof value !== 'number') return []
    if (value === '' || (typeof value === 'string' && ID.test(value))) return []
    return [{ field, value: valueWords(name, value, reader) }]
  })
}
