import type pg from 'pg'
import type { PgBoss } from 'pg-boss'
import type { PrismaClient } from './generated/client.ts'
import type { Job } from './save.ts'

/** Work that goes on outside any request, until it is done. */
export type Jobs = {
  /** Queues work that follows no command; what follows one is saved with it. */
  readonly add: (job: Job) => Promise<void>
  /** Says that work was saved, so that it needn't wait for the next look. */
  readonly look: () => void
  /** Lets what is under way finish. */
  readonly close: () => Promise<void>
}

/** Does the work of one name; what it throws is told, and the work is tried again. */
export type Worker = (payload: unknown) => Promise<void>

/** Jobs saved by a node that died before it could feed them are found at the next look, in ms. */
const LOOK_MS = 5000
const FED_AT_ONCE = 100
/** How long a stop waits for work under way, in ms. */
const STOP_MS = 10_000

/** A mail server may be out of order for a while: tried again after 2 to 4 s, then at ever longer spans, for some hours. */
const QUEUE = { retryLimit: 12, retryDelay: 2, retryBackoff: true, expireInSeconds: 60 } as const

/**
 * A queue in the same database, and the pump that feeds it. The save writes a row of `Job`; the pump moves it to the queue in
 * one transaction. So work is queued exactly when its commit is there, whichever node dies when.
 * The queue opens in the background: a start doesn't wait for it.
 */
export function openJobs(
  pool: pg.Pool,
  prisma: PrismaClient,
  workers: { readonly [name: string]: Worker },
): Jobs {
  let closed = false
  let feeding: Promise<void> = Promise.resolve()
  const opened = openQueue(pool, workers)
  opened.catch((error: unknown) => complain('the queue could not be opened', error))

  async function feed(): Promise<void> {
    const { boss, wake } = await opened
    if (closed) return
    for (;;) {
      const fed = await moveToQueue(pool, boss, Object.keys(workers))
      fed.forEach(wake)
      if (fed.length < FED_AT_ONCE) return
    }
  }
  function look(): void {
    feeding = feeding.then(feed).catch((error: unknown) => {
      if (!closed) complain('work could not be queued', error)
    })
  }
  const timer = setInterval(look, LOOK_MS)
  look()
  return {
    async add({ name, payload }) {
      await prisma.job.create({ data: { name, payload } })
      look()
    },
    look,
    async close() {
      closed = true
      clearInterval(timer)
      await feeding
      const queue = await opened.catch(() => null)
      await queue?.boss.stop({ graceful: true, timeout: STOP_MS })
    },
  }
}

interface Queue {
  readonly boss: PgBoss
  /** Makes the worker of that name look at once. */
  readonly wake: (name: string) => void
}

async function openQueue(
  pool: pg.Pool,
  workers: { readonly [name: string]: Worker },
): Promise<Queue> {
  const { PgBoss } = await import('pg-boss')
  const boss = new PgBoss({ db: asked(pool), schema: 'queue', schedule: false })
  boss.on('error', (error) => complain('the queue met an error', error))
  await boss.start()
  const ids = new Map<string, string>()
  for (const [name, work] of Object.entries(workers)) {
    await boss.createQueue(name, QUEUE)
    const id = await boss.work<unknown>(name, async (jobs) => {
      for (const { data } of jobs) await work(data)
    })
    ids.set(name, id)
  }
  const wake = (name: string) => {
    const id = ids.get(name)
    if (id !== undefined) boss.notifyWorker(id)
  }
  return { boss, wake }
}

/** Moves jobs that were saved to the queue. @returns their names */
async function moveToQueue(
  pool: pg.Pool,
  boss: PgBoss,
  names: readonly string[],
): Promise<readonly string[]> {
  const client = await pool.connect()
  let broken = true
  try {
    await client.query('begin')
    const { rows } = await client.query<{ readonly name: string; readonly payload: object }>(
      `delete from "Job" where "id" in (select "id" from "Job" where "name" = any($1)
         order by "id" limit ${FED_AT_ONCE} for update skip locked) returning "name", "payload"`,
      [names],
    )
    for (const { name, payload } of rows) await boss.send(name, payload, { db: asked(client) })
    await client.query('commit')
    broken = false
    return rows.map(({ name }) => name)
  } finally {
    // What was begun goes with a connection that broke.
    client.release(broken)
  }
}

/** How the queue asks the database: over our own connections. */
const asked = (db: Pick<pg.Pool, 'query'>) => ({
  executeSql: (text: string, values?: unknown[]) => db.query(text, values),
})

function complain(what: string, error: unknown): void {
  console.error(`fettleyard: ${what}:`, error)
}
