import type pg from 'pg'
import { BEFORE_FIRST, JournalEntry, RecordId } from '../journal/journal-entry.ts'
import { Entity } from '../record/entity.ts'
import { ProjectId, ShopId } from '../record/ids.ts'
import {
  emptyProjectRecord,
  emptyShopRecord,
  type ProjectRecord,
  projectAfter,
  type ShopRecord,
  type Step,
  shopAfter,
} from '../record/project-record.ts'
import { Instant, Sha256 } from '../record/scalars.ts'

/** Whatever runs a query: the pool, or one connection that holds a lock. */
export type Queryable = Pick<pg.Pool, 'query'>
/** A project or a shop book. */
export type AnyRecord = ProjectRecord | ShopRecord

/** A record as it stands, and what its journal's next entry must know of the last. */
export interface Current {
  readonly record: AnyRecord
  readonly lastAt: Instant
  readonly lastHash: Sha256
  /** About how much memory it takes. */
  readonly bytes: number
}

/** What happened to a record after a version; `entities` as they stand now, `entries` all that made them so. */
export interface Delta {
  readonly current: Current
  readonly entities: readonly Entity[]
  readonly entries: readonly JournalEntry[]
}

/** Memory of an entity against the length of its JSON, roughly: the cache has a bound, not a budget. */
const BYTES_PER_CHARACTER = 4

/** Tells a project from a shop book. */
export const isProject = (record: AnyRecord): record is ProjectRecord => 'projects' in record

/** A record before its first command. */
export function emptyRecord(id: RecordId): AnyRecord {
  const project = ProjectId.safeParse(id)
  return project.success ? emptyProjectRecord(project.data) : emptyShopRecord(ShopId.parse(id))
}

/** The record after a step. */
export const recordAfter = (record: AnyRecord, step: Step): AnyRecord =>
  isProject(record) ? projectAfter(record, step) : shopAfter(record, step)

/** What a record is before anything is known of it. */
export const nothingYet = (id: RecordId): Current => ({
  record: emptyRecord(id),
  lastAt: Instant.parse('1970-01-01T00:00:00.000Z'),
  lastHash: BEFORE_FIRST,
  bytes: 0,
})

/** One statement, so that all of it is of one moment. */
const READ = `
select
  coalesce((select "recordVersion" from "Project" where "id" = $1), (select "recordVersion" from "Shop" where "id" = $1)) as version,
  (select json_agg(json_build_object('version', e."version", 'entity', e."entity") order by e.place)::text
     from record_entities($1, $2) with ordinality as e ("version", "entity", place)) as entities,
  (select json_build_object('at', to_char("at" at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"'), 'hash', "hash")
     from "JournalEntry" where "record" = $1 order by "sequence" desc limit 1) as last`

interface Read {
  readonly version: number | null
  readonly entities: string | null
  readonly last: { readonly at: string; readonly hash: string } | null
}

async function read(db: Queryable, id: RecordId, after: number): Promise<Read | null> {
  const { rows } = await db.query<Read>({ name: 'read-record', text: READ, values: [id, after] })
  return rows[0]?.version == null ? null : rows[0]
}

/** The whole record; null where there is none with that id. */
export async function loadRecord(db: Queryable, id: RecordId): Promise<Current | null> {
  const found = await read(db, id, 0)
  return found === null ? null : currentAfter(nothingYet(id), found).current
}

/** Brings a record up to date by what changed after its version; null where there is no such record. */
export async function catchUp(db: Queryable, known: Current): Promise<Delta | null> {
  const { id, version } = known.record
  const found = await read(db, id, version)
  if (found === null) return null
  const { current, entities } = currentAfter(known, found)
  if (current.record.version === version) return { current: known, entities: [], entries: [] }
  const entries = await readEntries(db, id, version, current.record.version)
  return { current, entities, entries }
}

function currentAfter(
  known: Current,
  found: Read,
): { readonly current: Current; readonly entities: readonly Entity[] } {
  const rows: { version: number; entity: unknown }[] = JSON.parse(found.entities ?? '[]')
  const entities = rows.map(({ entity }) => Entity.parse(entity))
  const version = found.version ?? 0
  const versions = new Map(known.record.versions)
  rows.forEach(({ version: at }, index) => {
    const entity = entities[index]
    if (entity !== undefined) versions.set(entity.id, at)
  })
  const record = { ...recordAfter(known.record, { version, entities }), versions }
  const bytes = known.bytes + (found.entities?.length ?? 0) * BYTES_PER_CHARACTER
  const lastAt = found.last === null ? known.lastAt : Instant.parse(found.last.at)
  const lastHash = found.last === null ? known.lastHash : Sha256.parse(found.last.hash)
  return { current: { record, lastAt, lastHash, bytes }, entities }
}

/** A journal's columns as an entry has them. */
const ENTRY = `"record", "sequence", "person", "party", "role", "command", "device", "key", "previousHash", "hash", "parts",
  to_char("at" at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as "at",
  to_char("happenedAt" at time zone 'UTC', 'YYYY-MM-DD"T"HH24:MI:SS.MS"Z"') as "happenedAt"`

/** An entry of its row: what is null there isn't said. */
export const journalEntryOf = <Row extends { readonly device: string | null }>({
  device,
  ...row
}: Row): JournalEntry => JournalEntry.parse(device === null ? row : { ...row, device })

/** The entries of a journal after one sequence and up to another, oldest first. */
export async function readEntries(
  db: Queryable,
  record: RecordId,
  after = 0,
  to = 2_147_483_647,
): Promise<JournalEntry[]> {
  const { rows } = await db.query(
    `select ${ENTRY} from "JournalEntry"
      where "record" = $1 and "sequence" > $2 and "sequence" <= $3 order by "sequence"`,
    [record, after, to],
  )
  return rows.map(journalEntryOf)
}

/** The same, but for those of one person. */
export async function readEntriesOfOthers(
  db: Queryable,
  record: RecordId,
  after: number,
  to: number,
  person: string,
): Promise<JournalEntry[]> {
  const { rows } = await db.query(
    `select ${ENTRY} from "JournalEntry"
      where "record" = $1 and "sequence" > $2 and "sequence" <= $3 and "person" <> $4 order by "sequence"`,
    [record, after, to, person],
  )
  return rows.map(journalEntryOf)
}

/** The id of a project or of a shop book, else undefined. */
export function recordIdOf(text: string): RecordId | undefined {
  const parsed = RecordId.safeParse(text)
  return parsed.success ? parsed.data : undefined
}
