import type pg from 'pg'
import type { Env } from './env.ts'
import type { PrismaClient } from './generated/client.ts'
import type { Io } from './live/sockets.ts'
import type { OwnOrigin } from './web/origin.ts'

/** What the running server's parts share: made once by `main.ts`, handed down, never imported from there. */
export type Services = {
  readonly env: Env
  /** The version in package.json. */
  readonly version: string
  /** The address that links are made with, without a slash at its end. */
  readonly origin: string
  readonly isOwnOrigin: OwnOrigin
  /** Of the database in use, embedded or not, with its password. */
  readonly databaseUrl: string
  /** Of the records: the lane's saves, loading. */
  readonly pool: pg.Pool
  /** Of all else: accounts, links, files, pages of a journal. */
  readonly prisma: PrismaClient
  readonly io: Io
  /** Signs cookies and links. */
  readonly secret: string
}
