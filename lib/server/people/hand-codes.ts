import { randomInt } from 'node:crypto'
import { hash, verify } from '@node-rs/argon2'
import { type CodeFault, codeFault } from '../../record/code-fault.ts'
import { PersonId, type ShopId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import type { PrismaClient } from '../generated/client.ts'

/** Few digits are soon guessed by a machine that has the hash: so this is what a password's costs, and tries are counted. */
const COST = { memoryCost: 19_456, timeCost: 2, parallelism: 1 }
/** A code that a manager shows works once, and this long, in ms. */
const ONCE_MS = 15 * 60_000
const ONCE_DIGITS = 6

/** How a code compares: `none` where this hand has none yet, `missing` where none came. */
export type CodeIs = 'right' | 'wrong' | 'none' | 'missing'

/** How it stands with a hand's code, for the hand and for the shop's managers; never the code. */
export type CodeState = {
  readonly person: PersonId
  readonly setAt: Instant | null
  /** A manager's code for the first time is still open. */
  readonly onceUntil: Instant | null
  readonly resetBy: PersonId | null
  readonly resetAt: Instant | null
}

/** What hands sign with on their shop's phones. It is a shop's: what another shop's manager resets opens nothing here. */
export type HandCodes = {
  readonly states: (shop: ShopId) => Promise<readonly CodeState[]>
  /** @returns what is wrong with it, or null where it is set */
  readonly set: (shop: ShopId, person: PersonId, code: string) => Promise<CodeFault | null>
  /** Takes the code away and makes one that works once, to set a new one with. */
  readonly reset: (
    shop: ShopId,
    person: PersonId,
    by: PersonId,
  ) => Promise<{ readonly once: string; readonly until: Instant }>
  /** Sets a code with a manager's one: false where that isn't it, or its time is over. */
  readonly setByOnce: (
    shop: ShopId,
    person: PersonId,
    once: string,
    code: string,
  ) => Promise<boolean>
  readonly check: (shop: ShopId, person: PersonId, code: string | undefined) => Promise<CodeIs>
}

const instant = (date: Date | null): Instant | null =>
  date === null ? null : Instant.parse(date.toISOString())

/** Codes that lie in the database as Argon2id hashes. */
export function openHandCodes(prisma: PrismaClient): HandCodes {
  const key = (shop: ShopId, person: PersonId) => ({ shop_person: { shop, person } })

  async function write(shop: ShopId, person: PersonId, code: string): Promise<void> {
    const set = {
      codeHash: await hash(code, COST),
      setAt: new Date(),
      onceHash: null,
      onceUntil: null,
    }
    await prisma.handCode.upsert({
      where: key(shop, person),
      create: { shop, person, ...set },
      update: set,
    })
  }

  return {
    async states(shop) {
      const rows = await prisma.handCode.findMany({ where: { shop } })
      return rows.map((row) => ({
        person: PersonId.parse(row.person),
        setAt: instant(row.setAt),
        onceUntil:
          row.onceUntil !== null && row.onceUntil > new Date() ? instant(row.onceUntil) : null,
        resetBy: row.resetBy === null ? null : PersonId.parse(row.resetBy),
        resetAt: instant(row.resetAt),
      }))
    },
    async set(shop, person, code) {
      const fault = codeFault(code)
      if (fault === null) await write(shop, person, code)
      return fault
    },
    async reset(shop, person, by) {
      const once = Array.from({ length: ONCE_DIGITS }, () => randomInt(10)).join('')
      const until = new Date(Date.now() + ONCE_MS)
      const made = {
        codeHash: null,
        setAt: null,
        onceHash: await hash(once, COST),
        onceUntil: until,
        resetBy: by,
        resetAt: new Date(),
      }
      await prisma.handCode.upsert({
        where: key(shop, person),
        create: { shop, person, ...made },
        update: made,
      })
      return { once, until: Instant.parse(until.toISOString()) }
    },
    async setByOnce(shop, person, once, code) {
      const row = await prisma.handCode.findUnique({ where: key(shop, person) })
      const open = row?.onceUntil != null && row.onceUntil > new Date() ? row.onceHash : null
      if (open === null || !(await verify(open, once.slice(0, 20)))) return false
      // Of two at once one takes it.
      const taken = await prisma.handCode.updateMany({
        where: { shop, person, onceHash: open },
        data: { onceHash: null, onceUntil: null },
      })
      if (taken.count === 0) return false
      await write(shop, person, code)
      return true
    },
    async check(shop, person, code) {
      const row = await prisma.handCode.findUnique({ where: key(shop, person) })
      if (row === null || row.codeHash === null) return 'none'
      if (code === undefined) return 'missing'
      return (await verify(row.codeHash, code.slice(0, 20))) ? 'right' : 'wrong'
    },
  }
}
