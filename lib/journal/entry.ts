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

/** Makes the entry of a command. `newSalt`: unguessable text, new at each call. */
export function makeEntry(told: Told, newSalt: () => string): JournalEntry {
  const { record, sequence, at, happenedAt, actor, command, key, previousHash } = told
  const { person, party, role } = actor
  const parts = partsOf(told.input, told.entities, party ?? record, newSalt)
  const head = { record, sequence, at, happenedAt, person, party, role, command, key, previousHash }
  return { ...head, hash: hashOfEntry({ ...head, parts }), parts }
}

/** The entry's hash: SHA-256 of the canonical JSON of all it says, its parts by their hashes, and the previous hash. */
export function hashOfEntry(entry: Omit<JournalEntry, 'hash'>): Sha256 {
  const { record, sequence, at, happenedAt, person, party, role, command, key, previousHash } =
    entry
  const parts = entry.parts.map(({ scope, hash }) => ({ scope, hash }))
  const told = { record, sequence, at, happenedAt, person, party, role, command, key, previousHash }
  return Sha256.parse(sha256Hex(canonicalJson({ ...told, parts })))
}
