import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { migrate } from '../lib/server/database/migrate.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'

describe('migrations', () => {
  let database: TestDatabase
  let folder: string

  beforeEach(async () => {
    folder = mkdtempSync(join(tmpdir(), 'fettleyard-migrations-'))
    database = await aDatabase()
    // Of our own only: the template has the real ones.
    await query(database.url, 'truncate _prisma_migrations')
  })

  afterEach(async () => {
    await database.drop()
    rmSync(folder, { recursive: true, force: true })
  })

  function put(name: string, sql: string): void {
    mkdirSync(join(folder, name), { recursive: true })
    writeFileSync(join(folder, name, 'migration.sql'), sql)
  }

  it('are applied in order, once, also by two nodes at the same time', async () => {
    put('2_fill', "insert into spanner values ('5/8')")
    put('1_make', 'create table spanner (size text)')
    const done = await Promise.all([migrate(database.url, folder), migrate(database.url, folder)])
    expect(done.flat()).toEqual(['1_make', '2_fill'])
    expect(await query(database.url, 'select size from spanner')).toEqual([{ size: '5/8' }])
  })

  it('leave nothing of one that fails, and name it', async () => {
    put('1_make', 'create table spanner (size text); select nonsense')
    await expect(migrate(database.url, folder)).rejects.toThrow(/1_make failed and left nothing/)
    expect(await query(database.url, "select to_regclass('spanner') as t")).toEqual([{ t: null }])
  })

  it('refuse a database of a newer version', async () => {
    put('1_make', 'create table spanner (size text)')
    put('2_later', 'select 1')
    await migrate(database.url, folder)
    rmSync(join(folder, '2_later'), { recursive: true })
    await expect(migrate(database.url, folder)).rejects.toThrow(/newer version.*2_later/)
  })

  it('refuse when one was altered after it was applied', async () => {
    put('1_make', 'create table spanner (size text)')
    await migrate(database.url, folder)
    put('1_make', 'create table spanner (size integer)')
    await expect(migrate(database.url, folder)).rejects.toThrow(/1_make was altered/)
  })
})

async function query(url: string, sql: string): Promise<unknown[]> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  const { rows } = await client.query(sql)
  await client.end()
  return rows
}
