import { PrismaPg } from '@prisma/adapter-pg'
import type pg from 'pg'
import { PrismaClient } from '../generated/client.ts'

/**
 * Typed reads and writes of what lies outside the records: accounts, links, files, pages of a journal. It has no connections
 * of its own, and loads nothing until it is first asked. Close it before the pool.
 */
export const openPrisma = (pool: pg.Pool): PrismaClient =>
  new PrismaClient({ adapter: new PrismaPg(pool) })
