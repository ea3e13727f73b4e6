import pg from 'pg'
import type { Entity } from '../lib/record/entity.ts'
import type { Instant } from '../lib/record/scalars.ts'
import { openDraft, recordsOf, take } from '../lib/server/draft.ts'
import { nothingYet } from '../lib/server/load.ts'
import { commit, saveOf } from '../lib/server/save.ts'
import { aKey, anActor, at, lead } from './builders.ts'

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
