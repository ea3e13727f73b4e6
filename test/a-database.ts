import pg from 'pg'
import { inject } from 'vitest'
import type {} from './postgres.ts'

/** A database of its own for one test file or test, made in a seventh of a second from the migrated template. */
export type TestDatabase = { readonly url: string; drop(): Promise<void> }

let made = 0

/** Makes a migrated, empty database on the tests' Postgres. Drop it in `afterAll`. */
export async function aDatabase(): Promise<TestDatabase> {
  const { adminUrl, template } = inject('postgres')
  made += 1
  const name = `t_${process.pid}_${made}_${Date.now().toString(36)}`
  await admin(adminUrl, `create database ${name} template ${template}`)
  const url = new URL(adminUrl)
  url.pathname = `/${name}`
  return {
    url: url.href,
    drop: () => admin(adminUrl, `drop database if exists ${name} with (force)`),
  }
}

async function admin(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  client.on('error', () => {})
  await client.connect()
  try {
    await client.query(sql)
  } finally {
    await client.end()
  }
}
