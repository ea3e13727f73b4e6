import { afterAll, beforeAll, expect, it } from 'vitest'
import { openPool } from '../lib/server/database/database.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'

let database: TestDatabase
beforeAll(async () => {
  database = await aDatabase()
})
afterAll(() => database.drop())

it('A connection that breaks while it is held ends its own work, and not the server', async () => {
  const pool = openPool(database.url)
  const held = await pool.connect()
  const { rows } = await held.query('select pg_backend_pid() as pid')
  const broke = new Promise((done) => held.once('end', done))
  await pool.query('select pg_terminate_backend($1)', [rows[0].pid])
  await broke
  await expect(held.query('select 1')).rejects.toThrow()
  held.release(true)
  expect((await pool.query('select 2 as two')).rows).toEqual([{ two: 2 }])
  await pool.end()
})
