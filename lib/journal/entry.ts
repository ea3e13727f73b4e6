import type { Actor } from '../record/actor.ts'
import { canonicalJson } from '../record/canonical-json.ts'
import type { CommandName } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import type { Entity } from '../record/entity.ts'
import type { CommandKey } from '../record/ids.ts'
import { type Instant, Sha256 } from '../record/scalars.ts'
import { sha256Hex } from '../record/sha256.ts'
import type { JournalEntry, RecordId } from './journal-entry.ts'
import { partsOf } from './parts.ts'

/** What an entry tells. `entities`: those of this record, as they are after the command. */
export interface Told {
  readonly record: RecordId
  readonly sequence: number
  readonly at: Instant
  readonly happenedAt: Instant
  readonly actor: Actor
  readonly command: CommandName
  readonly key: CommandKey
  readonly input: Json
  readonly entities: readonly Entity[]
  readonly previousHash: Sha256
}

/**
 * Makes the entry of a command. `newSalt`: unguessable text, new at each call.
 * `hash`: SHA-256 as `sha256Hex` makes it, where the machine has a faster one.
 */
export function makeEntry(
  told: Told,
  newSalt: () => string,
  hash: (text: string) => string = sha256Hex,
): JournalEntry {
  const { record, sequence, at, happenedAt, actor, command, key, previousHash } = told
  const { person, party, role, device } = actor
  const parts = partsOf(told.input, told.entities, party ?? record, newSalt, hash)
  const through = device === undefined ? {} : { device }
  const who = { person, party, role, ...through }
  const head = { record, sequence, at, happenedAt, ...who, command, key, previousHash }
  return { ...head, hash: hashOfEntry({ ...head, parts }, hash), parts }
}

/**
 * The entry's hash: SHA-256 of the canonical JSON of all it says, its parts by their hashes, and the previous hash. What it
 * doesn't say, such as a phone that there was none of, isn't in it.
 */
export function hashOfEntry(entry: Omit<JournalEntry, 'hash'>, hash = sha256Hex): Sha256 {
  const { record, sequence, at, happenedAt, command, key, previousHash } = entry
  const { person, party, role, device } = entry
  const parts = entry.parts.map((part) => ({ scope: part.scope, hash: part.hash }))
  const who = { person, party, role, device }
  const told = { record, sequence, at, happenedAt, ...who, command, key, previousHash }
  return Sha256.parse(hash(canonicalJson({ ...told, parts })))
}
