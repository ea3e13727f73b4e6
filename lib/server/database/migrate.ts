import { createHash, randomUUID } from 'node:crypto'
import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import pg from 'pg'
import { Stop } from '../stop.ts'
import { installFunctions } from './commit-function.ts'

const MIGRATIONS = fileURLToPath(new URL('../../../prisma/migrations/', import.meta.url))

/** The one that `prisma migrate` takes too, so that the two never run at once. */
const MIGRATE_LOCK = 72_707_369

/** Prisma's own table, so that `prisma migrate` reads what we applied. */
const TABLE = `create table if not exists _prisma_migrations (
  id varchar(36) primary key not null,
  checksum varchar(64) not null,
  finished_at timestamptz,
  migration_name varchar(255) not null,
  logs text,
  rolled_back_at timestamptz,
  started_at timestamptz not null default now(),
  applied_steps_count integer not null default 0
)`

type Migration = { readonly name: string; readonly sql: string; readonly checksum: string }

/**
 * Brings the database to this version's tables: each migration once, in name order, in a transaction of its own.
 * @param folder of the migrations, each a folder with `migration.sql`
 * @returns the names of those applied now
 * @throws {Stop} when the database is of a newer or an altered version, or a migration fails (it then left nothing)
 */
export async function migrate(
  url: string,
  folder: string = MIGRATIONS,
): Promise<readonly string[]> {
  const ours = migrationsIn(folder)
  const client = new pg.Client({ connectionString: url })
  client.on('error', () => {})
  await connect(client)
  try {
    // Freed with the connection. Other nodes wait here and then find everything applied.
    await client.query('select pg_advisory_lock($1)', [MIGRATE_LOCK])
    await client.query(TABLE)
    const applied = await appliedIn(client)
    refuseForeign(ours, applied)
    const missing = ours.filter(({ name }) => !applied.has(name))
    for (const migration of missing) await apply(client, migration)
    if (folder === MIGRATIONS) await installFunctions(client)
    return missing.map(({ name }) => name)
  } finally {
    await client.end()
  }
}

async function connect(client: pg.Client): Promise<void> {
  try {
    await client.connect()
  } catch (error) {
    throw new Stop(
      `The database at ${client.host}:${client.port} can't be reached: ${reason(error)}. Check DATABASE_URL.`,
    )
  }
}

function migrationsIn(folder: string): readonly Migration[] {
  if (!existsSync(folder)) return []
  return readdirSync(folder)
    .filter((name) => existsSync(join(folder, name, 'migration.sql')))
    .sort()
    .map((name) => {
      const bytes = readFileSync(join(folder, name, 'migration.sql'))
      const checksum = createHash('sha256').update(bytes).digest('hex')
      return { name, sql: bytes.toString(), checksum }
    })
}

async function appliedIn(client: pg.Client): Promise<ReadonlyMap<string, string>> {
  const { rows } = await client.query<{ name: string; checksum: string; finished: boolean }>(
    `select migration_name as name, checksum, finished_at is not null as finished
       from _prisma_migrations where rolled_back_at is null`,
  )
  const half = rows.find(({ finished }) => !finished)
  if (half !== undefined) {
    throw new Stop(
      `The migration ${half.name} was begun by another tool and never finished. Resolve it with that tool first.`,
    )
  }
  return new Map(rows.map(({ name, checksum }) => [name, checksum]))
}

function refuseForeign(ours: readonly Migration[], applied: ReadonlyMap<string, string>): void {
  const known = new Map(ours.map(({ name, checksum }) => [name, checksum]))
  for (const [name, checksum] of applied) {
    const mine = known.get(name)
    if (mine === undefined) {
      throw new Stop(
        `The database is of a newer version of Fettleyard: it has the migration ${name}, unknown here. ` +
          'Start the newer version, or restore a backup that this version made. Nothing was changed.',
      )
    }
    if (mine !== checksum) {
      throw new Stop(
        `The migration ${name} was altered after this database had applied it. ` +
          'Put its file back as it was, or use another database. Nothing was changed.',
      )
    }
  }
}

async function apply(client: pg.Client, { name, sql, checksum }: Migration): Promise<void> {
  await client.query('begin')
  try {
    await client.query(sql)
    await client.query(
      `insert into _prisma_migrations (id, checksum, finished_at, migration_name, applied_steps_count)
       values ($1, $2, now(), $3, 1)`,
      [randomUUID(), checksum, name],
    )
    await client.query('commit')
  } catch (error) {
    await client.query('rollback')
    throw new Stop(`The migration ${name} failed and left nothing behind: ${reason(error)}`)
  }
}

function reason(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
