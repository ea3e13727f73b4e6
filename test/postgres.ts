import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { migrate } from '../lib/server/database/migrate.ts'
import { startPostgres } from '../lib/server/database/postgres.ts'

declare module 'vitest' {
  export interface ProvidedContext {
    postgres: { readonly adminUrl: string; readonly template: string }
  }
}

/** The tests' data may be lost with the machine. */
const FAST = { fsync: 'off', full_page_writes: 'off', synchronous_commit: 'off' }
const TEMPLATE = 'migrated'

/** Starts one real Postgres for the whole run, with a migrated database that `aDatabase` copies. */
export async function setup(project: TestProject): Promise<() => Promise<void>> {
  const folder = mkdtempSync(join(tmpdir(), 'fettleyard-test-'))
  chmodSync(folder, 0o711)
  const postgres = await startPostgres(folder, FAST)
  const client = new pg.Client({ connectionString: postgres.url })
  await client.connect()
  await client.query(`create database ${TEMPLATE}`)
  await client.end()
  const template = new URL(postgres.url)
  template.pathname = `/${TEMPLATE}`
  await migrate(template.href)
  project.provide('postgres', { adminUrl: postgres.url, template: TEMPLATE })
  return async () => {
    await postgres.stop()
    rmSync(folder, { recursive: true, force: true })
  }
}
