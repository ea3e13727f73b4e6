import * as z from 'zod/mini'
import { Role } from '../record/actor.ts'
import { projectCommandNames, shopCommandNames } from '../record/command-names.ts'
import type { Json } from '../record/condition.ts'
import { CommandKey, DeviceId, PartyId, PersonId, ProjectId, ShopId } from '../record/ids.ts'
import { Instant, Sha256 } from '../record/scalars.ts'

/** What came out of JSON already. */
const AnyJson = z.custom<Json>((value) => value !== undefined)

/** What a part says: the input, where it may stand here, and of each changed entity the fields of this scope. */
export const PartValue = z.object({
  input: z.optional(AnyJson),
  entities: z.array(z.record(z.string(), AnyJson)),
})
export type PartValue = Readonly<z.infer<typeof PartValue>>

/**
 * One scope's part of an entry; `hash` is the SHA-256 of the canonical JSON of `{salt, scope, value}`.
 * Without salt and value it was withheld from this reader, or erased: the hash holds the chain.
 */
export const Part = z.object({
  scope: z.string(),
  hash: Sha256,
  salt: z.optional(z.string()),
  value: z.optional(PartValue),
})
export type Part = Readonly<z.infer<typeof Part>>

/** A record's id: of a project or a shop book. */
export const RecordId = z.union([ProjectId, ShopId])
export type RecordId = z.infer<typeof RecordId>

/** One change of one record. `sequence` is the version that the record came to; `at` the server's clock. */
export const JournalEntry = z.object({
  record: RecordId,
  sequence: z.int().check(z.minimum(1)),
  at: Instant,
  happenedAt: Instant,
  person: PersonId,
  party: z.nullable(PartyId),
  role: Role,
  command: z.enum([...projectCommandNames, ...shopCommandNames]),
  /** The shop's phone that it came through; not there where somebody was signed in as themselves. */
  device: z.optional(DeviceId),
  /** The command's idempotency key: the same in every journal that the command wrote to. */
  key: CommandKey,
  previousHash: Sha256,
  hash: Sha256,
  parts: z.array(Part),
})
export type JournalEntry = Readonly<z.infer<typeof JournalEntry>>

/** What the first entry of a journal has in place of the previous one's hash. */
export const BEFORE_FIRST = Sha256.parse('0'.repeat(64))
