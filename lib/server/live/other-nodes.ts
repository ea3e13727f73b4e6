import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import * as z from 'zod/mini'
import { RecordId } from '../../journal/journal-entry.ts'
import { CHANNEL } from '../database/commit-function.ts'
import type { Commands } from '../run-command.ts'

const Notice = z.object({
  node: z.string(),
  records: z.array(z.tuple([RecordId, z.int()])),
})

/** A notice can be lost with its connection: every so often the versions are compared, in ms. */
const COMPARE_MS = 15_000
const RECONNECT_MS = 500

/** Hears what other nodes save, so that this one's records and sockets follow. */
export interface OtherNodes {
  readonly close: () => Promise<void>
}

/** Listens on the database at `url`. `pool` is for the comparison. */
export async function listenToOtherNodes(
  url: string,
  pool: pg.Pool,
  commands: Commands,
): Promise<OtherNodes> {
  let client: pg.Client | undefined
  let closed = false

  async function compare(): Promise<void> {
    const ids = commands.records.ids()
    if (ids.length === 0) return
    const { rows } = await pool.query<{ id: string; version: number }>(
      `select "id", "recordVersion" as version from "Project" where "id" = any($1)
       union all select "id", "recordVersion" from "Shop" where "id" = any($1)`,
      [ids],
    )
    const versions = new Map(rows.map(({ id, version }) => [id, version]))
    const behind = ids.filter(
      (id) => (commands.records.peek(id)?.record.version ?? 0) < (versions.get(id) ?? 0),
    )
    await Promise.all(behind.map((id) => commands.catchUp(id)))
  }
  async function hear(payload: string | undefined): Promise<void> {
    const notice = Notice.safeParse(JSON.parse(payload ?? 'null'))
    if (!notice.success || notice.data.node === commands.node) return
    const behind = notice.data.records.filter(
      ([id, version]) => (commands.records.peek(id)?.record.version ?? version) < version,
    )
    await Promise.all(behind.map(([id]) => commands.catchUp(id)))
  }
  const complain = (error: unknown) => {
    if (!closed) console.error('fettleyard: other nodes could not be followed:', error)
  }
  async function connect(): Promise<void> {
    const next = new pg.Client({ connectionString: url })
    next.on('error', () => {})
    let listening = false
    next.once('end', () => listening && void again())
    next.on('notification', ({ payload }) => void hear(payload).catch(complain))
    client = next
    await next.connect()
    await next.query(`listen ${CHANNEL}`)
    listening = true
  }
  /** What was said while nobody listened is found by comparing. */
  async function again(): Promise<void> {
    while (!closed) {
      await sleep(RECONNECT_MS)
      try {
        await connect()
        await compare()
        return
      } catch (error) {
        complain(error)
      }
    }
  }
  await connect()
  const timer = setInterval(() => void compare().catch(complain), COMPARE_MS)
  return {
    async close() {
      closed = true
      clearInterval(timer)
      await client?.end()
    },
  }
}
