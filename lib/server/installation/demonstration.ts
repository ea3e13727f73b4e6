import { createHash } from 'node:crypto'
import { existsSync } from 'node:fs'
import { rm, writeFile } from 'node:fs/promises'
import { join } from 'node:path'
import type pg from 'pg'
import type { LoadDemonstration } from '../../../seed/seam.ts'
import type { DemoProgress } from '../../command/wire-access.ts'
import { Instant, Sha256 } from '../../record/scalars.ts'
import { openFiles } from '../files.ts'
import type { Enter } from '../lane/enter.ts'
import type { Outcome } from '../lane/outcome.ts'
import { addAccount } from '../people/accounts.ts'
import { alone, type Databases, whileEmpty } from './installation.ts'

/** The demonstration of this installation: loaded while nothing else exists, removed as a whole. */
export type Demonstration = {
  readonly progress: () => Promise<DemoProgress>
  /** Begins to load; false where something exists already, or it is being loaded. */
  readonly load: () => Promise<boolean>
  /** Removes it with its people and files; false where there is more than the demonstration. */
  readonly remove: () => Promise<boolean>
  /** At a start: clears away one that was cut short while it loaded. */
  readonly recover: () => Promise<void>
}

/** `addPhone` gives its lead shop a phone. `forget` is called after a removal: nothing that was remembered counts any more. */
export function openDemonstration(
  databases: Databases,
  enter: Enter,
  dataDir: string,
  load: () => Promise<LoadDemonstration>,
  addPhone: () => Promise<void>,
  forget: () => void,
): Demonstration {
  const { pool, prisma } = databases
  let running: DemoProgress | undefined
  const files = openFiles(prisma, dataDir)
  /** There while it loads. */
  const underWay = join(dataDir, 'demonstration-loading')

  async function clear(): Promise<void> {
    await erase(pool, dataDir)
    await rm(underWay, { force: true })
    forget()
  }

  async function run(): Promise<void> {
    const loadDemonstration = await load()
    await loadDemonstration({
      now: Instant.parse(new Date().toISOString()),
      async person(name, email) {
        return (await addAccount(prisma, { name, email, passwordHash: null, demo: true })).id
      },
      async keep(project, bytes, by) {
        const sha256 = Sha256.parse(createHash('sha256').update(bytes).digest('hex'))
        const fault = await files.keep(
          project,
          sha256,
          new Blob([Uint8Array.from(bytes)]).stream(),
          by,
        )
        if (fault !== null) throw new Error(`A file of the demonstration was not kept: ${fault}`)
        return sha256
      },
      async play({ person, at, ...command }) {
        const who = { person, proof: 'demonstration' as const, provedAt: at }
        // Whoever opens a shop's book has no part in it yet.
        const as = command.name === 'shop.create' ? founder(who) : {}
        const outcome = await enter({ who, at, ...command, ...as })
        if (outcome.is === 'done') return outcome.moves.flatMap(({ move }) => move.entities)
        throw new Error(`${command.name} at ${at} was not done: ${JSON.stringify(whyNot(outcome))}`)
      },
      progress(done, total, message) {
        running = { state: 'loading', done, total, message }
      },
    })
    await addPhone()
  }

  return {
    async progress() {
      if (running !== undefined) return running
      const car = await prisma.project.findFirst({ where: { demo: true }, select: { id: true } })
      return { state: car === null ? 'none' : 'loaded', done: 0, total: 0, message: null }
    },
    async load() {
      if (running?.state === 'loading') return false
      running = { state: 'loading', done: 0, total: 0, message: null }
      const begun = Promise.withResolvers<boolean>()
      void whileEmpty(databases, async () => {
        begun.resolve(true)
        try {
          await writeFile(underWay, '')
          await prisma.person.deleteMany()
          await run()
          await rm(underWay, { force: true })
          running = undefined
        } catch (error) {
          console.error('fettleyard: the demonstration could not be loaded:', error)
          await clear()
          const message = 'It could not be loaded. Nothing of it was kept.'
          running = { state: 'failed', done: 0, total: 0, message }
        }
        return true
      }).then(
        (done) => {
          if (done === null) running = undefined
          begun.resolve(done !== null)
        },
        (error: unknown) => {
          running = undefined
          begun.reject(error)
        },
      )
      return begun.promise
    },
    remove: () =>
      alone(pool, async () => {
        const [ownCars, ownShops, cars] = await Promise.all([
          prisma.project.count({ where: { demo: false } }),
          prisma.shop.count({ where: { demo: false } }),
          prisma.project.count(),
        ])
        if (ownCars > 0 || ownShops > 0 || cars === 0) return false
        await clear()
        running = undefined
        return true
      }),
    async recover() {
      if (existsSync(underWay)) await alone(pool, clear)
    },
  }
}

const founder = (who: Parameters<Enter>[0]['who']) => ({
  as: { ...who, role: 'manager', party: null, shop: null } as const,
})

const whyNot = (outcome: Exclude<Outcome, { readonly is: 'done' }>): unknown => {
  if (outcome.is === 'refused') return outcome.conditions
  return outcome.is === 'invalid' ? outcome.issues : outcome.is
}

/** Empties every table of ours. The journal's guard against rewriting is off inside this one transaction only. */
async function erase(pool: pg.Pool, dataDir: string): Promise<void> {
  const client = await pool.connect()
  try {
    await client.query('begin')
    const { rows } = await client.query<{ readonly name: string }>(
      `select quote_ident(tablename) as name from pg_tables
        where schemaname = current_schema() and tablename <> '_prisma_migrations'`,
    )
    await client.query('alter table "JournalEntry" disable trigger user')
    await client.query(`truncate ${rows.map(({ name }) => name).join(', ')}`)
    await client.query('alter table "JournalEntry" enable trigger user')
    await client.query('commit')
  } catch (error) {
    await client.query('rollback')
    throw error
  } finally {
    client.release()
  }
  await rm(join(dataDir, 'files'), { recursive: true, force: true })
}
