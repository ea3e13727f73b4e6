import * as z from 'zod/mini'
import { canonicalJson } from '../record/canonical-json.ts'
import type { Json } from '../record/condition.ts'
import { Entity, entitySchemas } from '../record/entity.ts'
import { Sha256 } from '../record/scalars.ts'
import { sha256Hex } from '../record/sha256.ts'
import type { Part, PartValue } from './journal-entry.ts'
import { type ScopeKey, scopedOf, scopeOfInput } from './scope-key.ts'

/** The hash of a part that has its value. */
export const hashOfPart = (
  scope: ScopeKey,
  salt: string,
  value: PartValue,
  hash = sha256Hex,
): Sha256 => Sha256.parse(hash(canonicalJson({ salt, scope, value })))

interface Value {
  input?: Json
  readonly entities: Record<string, Json>[]
}

/**
 * Puts what a command was given and what it changed into parts by scope.
 * `givenBy`: the party (or the record, where no party acts) that keeps an input which nobody else may read as a whole.
 * `newSalt`: unguessable text, new at each call, so that a hash doesn't give away a value that few could be.
 */
export function partsOf(
  input: Json,
  entities: readonly Entity[],
  givenBy: string,
  newSalt: () => string,
  hash = sha256Hex,
): Part[] {
  const values = new Map<ScopeKey, Value>()
  const partFor = (key: ScopeKey): Value => {
    const known = values.get(key)
    if (known !== undefined) return known
    const made: Value = { entities: [] }
    values.set(key, made)
    return made
  }
  partFor(scopeOfInput(entities, givenBy)).input = input
  for (const entity of entities) {
    for (const [key, fragment] of fragmentsOf(entity)) partFor(key).entities.push(fragment)
  }
  return [...values]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([scope, value]) => {
      const salt = newSalt()
      return { scope, salt, hash: hashOfPart(scope, salt, value, hash), value }
    })
}

/** An entity's fields by scope; each fragment names kind and id. */
function fragmentsOf(entity: Entity): Map<ScopeKey, Record<string, Json>> {
  const scoped = scopedOf(entity)
  const keys = new Map(scoped.fields.map(({ field, key }) => [field, key]))
  const fragments = new Map<ScopeKey, Record<string, Json>>()
  const { kind, id } = entity
  for (const [field, value] of Object.entries(entity)) {
    const key = keys.get(field) ?? scoped.base
    const fragment = fragments.get(key) ?? { kind, id }
    fragments.set(key, { ...fragment, [field]: value })
  }
  return fragments
}

/** What an entry's reader gets of the entities it changed, those of one kind and scope in the order of the change. */
export interface Joined {
  readonly entities: readonly Entity[]
  /** Some part was withheld or erased: entities may be missing, or have null where something was said. */
  readonly partial: boolean
}

/**
 * The entities of an entry's parts. A field whose part is missing is null; an entity whose main part is missing isn't there.
 * @throws where all parts are there and still make no entity
 */
export function joinParts(parts: readonly Part[]): Joined {
  const partial = parts.some(({ value }) => value === undefined)
  const byId = new Map<string, Record<string, Json>>()
  for (const { value } of parts) {
    for (const fragment of value?.entities ?? []) {
      const id = String(fragment.id)
      byId.set(id, { ...byId.get(id), ...fragment })
    }
  }
  const entities: Entity[] = []
  for (const found of byId.values()) {
    const parsed = Entity.safeParse(withNulls(found))
    if (parsed.success) entities.push(parsed.data)
    else if (!partial)
      throw new Error(`The journal holds no ${found.kind}: ${parsed.error.message}`)
  }
  return { entities, partial }
}

const nullableFields: ReadonlyMap<string, readonly string[]> = new Map(
  Object.entries(entitySchemas).map(([kind, schema]) => [
    kind,
    Object.entries(schema.shape)
      .filter(([, field]) => z.safeParse(field, null).success)
      .map(([name]) => name),
  ]),
)

/** A nullable field that isn't there was withheld or erased, or is younger than the entry. */
function withNulls(found: Record<string, Json>): Record<string, Json> {
  const missing = (nullableFields.get(String(found.kind)) ?? []).filter(
    (field) => !(field in found),
  )
  return { ...found, ...Object.fromEntries(missing.map((field) => [field, null])) }
}
