import * as z from 'zod/mini'
import type { Json } from '../lib/record/condition.ts'
import { at } from './builders.ts'

/** Draws a whole number from 0 to under `below`. */
export type Draw = (below: number) => number

/** A draw that reads its numbers from a list, which a property test makes and shrinks; zeros when it is used up. */
export function drawFrom(numbers: readonly number[]): Draw {
  let next = 0
  return (below) => (numbers[next++] ?? 0) % Math.max(1, below)
}

interface Schema {
  readonly type?: string
  readonly pattern?: string
  readonly format?: string
  readonly enum?: readonly Json[]
  readonly const?: Json
  readonly anyOf?: readonly Schema[]
  readonly oneOf?: readonly Schema[]
  readonly properties?: { readonly [name: string]: Schema }
  readonly required?: readonly string[]
  readonly items?: Schema
  readonly minItems?: number
  readonly minimum?: number
  readonly maximum?: number
}

/** A well-formed input for a command, whatever it takes: ids are drawn from `ids`, by their prefix. */
export function someInput(schema: z.ZodMiniType, ids: readonly string[], draw: Draw): Json {
  // Plain JSON from here on: the library's own type of it says more than is used.
  const described: Schema = JSON.parse(
    JSON.stringify(z.toJSONSchema(schema, { unrepresentable: 'any' })),
  )
  return made(described, ids, draw)
}

function made(schema: Schema, ids: readonly string[], draw: Draw): Json {
  const choices = schema.anyOf ?? schema.oneOf
  if (choices !== undefined) return made(choices[draw(choices.length)] ?? {}, ids, draw)
  if (schema.const !== undefined) return schema.const
  if (schema.enum !== undefined) return schema.enum[draw(schema.enum.length)] ?? null
  switch (schema.type) {
    case 'object':
      return someObject(schema, ids, draw)
    case 'array': {
      const length = Math.max(schema.minItems ?? 0, draw(3))
      return Array.from({ length }, () => made(schema.items ?? {}, ids, draw))
    }
    case 'integer':
    case 'number':
      return Math.max(schema.minimum ?? 0, Math.min(schema.maximum ?? 50, draw(50)))
    case 'boolean':
      return draw(2) === 1
    case 'string':
      return someText(schema, ids, draw)
    default:
      return null
  }
}

function someObject(schema: Schema, ids: readonly string[], draw: Draw): Json {
  const filled: { [name: string]: Json } = {}
  for (const [name, property] of Object.entries(schema.properties ?? {})) {
    if (schema.required?.includes(name) || draw(3) > 0) filled[name] = made(property, ids, draw)
  }
  return filled
}

function someText({ pattern = '', format }: Schema, ids: readonly string[], draw: Draw): string {
  if (format === 'date') return `2026-0${1 + draw(9)}-1${draw(10)}`
  if (pattern.startsWith('^\\d{4}')) return at(draw(300))
  if (pattern.includes('{64}')) return String(draw(10)).repeat(64)
  if (pattern.startsWith('^[MLml')) return 'M 10 40 L 40 10 L 80 60 L 120 20 L 160 70 L 200 30'
  const prefix = /^\^\(?([a-z]{3})_/.exec(pattern)?.[1]
  const fitting = prefix === undefined && !pattern.startsWith('^[a-z]{3}_') ? [] : ids
  const own = prefix === undefined ? fitting : fitting.filter((id) => id.startsWith(`${prefix}_`))
  if (own.length > 0) return own[draw(own.length)] ?? ''
  if (prefix !== undefined) return `${prefix}_nowhere`
  return ['A word', 'Two words', 'GBP'][draw(3)] ?? ''
}
