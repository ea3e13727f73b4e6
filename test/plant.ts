import pg from 'pg'
import type { RecordId } from '../lib/journal/journal-entry.ts'
import { replayProject, replayShop } from '../lib/journal/replay.ts'
import { verifyJournal } from '../lib/journal/verify.ts'
import { canonicalJson } from '../lib/record/canonical-json.ts'
import type { Entity } from '../lib/record/entity.ts'
import { type PersonId, ProjectId, ShopId } from '../lib/record/ids.ts'
import type { Instant } from '../lib/record/scalars.ts'
import type { SessionActor } from '../lib/server/lane/actor.ts'
import { openDraft, recordsOf, take } from '../lib/server/lane/draft.ts'
import type { Outcome } from '../lib/server/lane/outcome.ts'
import { type AnyRecord, loadRecord, nothingYet, readEntries } from '../lib/server/load.ts'
import { commit, saveOf } from '../lib/server/save.ts'
import { aKey, anActor, anId, at, lead } from './builders.ts'
import { aBay, aMembership, aShop } from './shop-builders.ts'

/** Puts accounts for those persons into a database. */
export async function plantPersons(db: Pick<pg.Pool, 'query'>, persons: Iterable<string>) {
  for (const id of new Set(persons)) {
    await db.query(
      'insert into "Person" ("id", "name", "email") values ($1, $2, $3) on conflict do nothing',
      [id, `Person ${id.slice(4)}`, `${id.slice(4)}@yard.example`],
    )
  }
}

/**
 * Puts entities into a database as one entry of each record's journal, whatever commands would make them: so tests may begin
 * with any record. Every record in it must be new and have its project or shop among the entities.
 */
export async function plant(
  db: Pick<pg.Pool, 'query'>,
  entities: readonly Entity[],
  moment: Instant = at(0),
): Promise<void> {
  const persons = entities.flatMap((entity) =>
    Object.values(entity).filter((value) => typeof value === 'string' && value.startsWith('psn_')),
  )
  await plantPersons(db, [...persons.map(String), anActor(lead).person])
  const ids = [...new Set(entities.flatMap(recordsOf))]
  const draft = openDraft(ids.map(nothingYet))
  const [home] = ids
  if (home === undefined) return
  const actor = anActor(lead)
  const key = aKey()
  take(
    draft,
    {
      home,
      who: actor,
      as: actor,
      name: 'project.create',
      input: {},
      key,
      payloadHash: '0'.repeat(64),
      happenedAt: moment,
      now: null,
      expected: new Map(),
      creates: true,
      jobs: [],
      settle: () => {},
      fail: () => {},
    },
    home,
    { actor, at: moment, happenedAt: moment },
    entities,
    () => 'planted',
  )
  await commit(db, 'test', saveOf(draft))
}

/** Connections to a test's database. */
export function aPool(url: string, max = 20): pg.Pool {
  const pool = new pg.Pool({ connectionString: url, max })
  pool.on('error', () => {})
  return pool
}

/** What is told of a command that was carried out. @throws where it wasn't */
export function done(outcome: Outcome): Extract<Outcome, { readonly is: 'done' }> {
  if (outcome.is === 'done') return outcome
  throw new Error(`It was not done: ${JSON.stringify({ ...outcome, record: undefined })}`)
}

/** A person who is signed in. */
export const signedInAs = (person: PersonId): SessionActor => ({
  person,
  proof: 'password',
  provedAt: null,
})

/** A shop that manages nothing yet: its book with one bay and one manager. */
export function aShopWithBay(name: string) {
  const shop = anId('shp', name)
  const bay = anId('bay', name)
  const person = anId('psn', name)
  const entities: Entity[] = [
    aShop({ id: shop, name: `Shop ${name}` }),
    aBay({ id: bay, shop }),
    aMembership({ id: anId('mbr', name), shop, person }),
  ]
  return { shop, bay, person, entities }
}

/** Holds a record's journal against its tables: every entity, every version, byte for byte. */
export async function journalAgainstTables(db: Pick<pg.Pool, 'query'>, id: RecordId) {
  const entries = await readEntries(db, id)
  const loaded = await loadRecord(db, id)
  const project = ProjectId.safeParse(id)
  const replayed = project.success
    ? replayProject(project.data, entries)
    : replayShop(ShopId.parse(id), entries)
  return {
    entries,
    verified: verifyJournal(entries),
    tables: bytesOf(loaded?.record),
    replayed: bytesOf(replayed),
  }
}

/** A record as text, in one form only. */
function bytesOf(record: AnyRecord | undefined): string {
  if (record === undefined) return ''
  const tables = Object.entries(record).map(([name, value]: [string, unknown]) => {
    if (name === 'versions') return [name, Object.fromEntries(record.versions)]
    const rows = typeof value === 'object' && value && 'rows' in value ? value.rows : undefined
    return [name, rows instanceof Map ? [...rows.values()].sort(byId) : value]
  })
  return canonicalJson(Object.fromEntries(tables))
}

const byId = (a: { readonly id: string }, b: { readonly id: string }) => (a.id < b.id ? -1 : 1)
