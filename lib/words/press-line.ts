import type { CommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { label } from './labels.ts'
import { entityName } from './names.ts'

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

/** *standingConsentEach* as a person reads it: *standing consent each*. */
const fieldWords = (field: string): string =>
  field.replaceAll(/[A-Z]/g, (letter) => ` ${letter.toLowerCase()}`)

/** What was typed or chosen, line by line: without ids, which name what the press is about, and with files counted. */
export function inputLines(input: Json): readonly InputLine[] {
  if (!isObject(input)) return []
  return Object.entries(input).flatMap(([name, value]): readonly InputLine[] => {
    const field = fieldWords(name)
    if (Array.isArray(value)) {
      if (name === 'files') return [{ field: 'files', value: String(value.length) }]
      return value.flatMap((one) => (isObject(one) ? inputLines(one) : inputLines({ [name]: one })))
    }
    if (isObject(value)) return inputLines(value)
    if (value === null || (typeof value === 'string' && (value === '' || ID.test(value)))) return []
    if (typeof value === 'boolean') return value ? [{ field, value: 'yes' }] : []
    return [{ field, value: String(value) }]
  })
}
