import pg from 'pg'
import type { JournalEntry, RecordId } from '../journal/journal-entry.ts'
import type { Json } from '../record/condition.ts'
import type { Entity } from '../record/entity.ts'
import { SQLSTATE } from './database/commit-function.ts'
import { tableOf } from './database/tables.ts'
import { type Draft, recordsOf } from './lane/draft.ts'
import type { Queryable } from './load.ts'

/** Rows by table: an entity with the columns that are ours. */
type Rows = { readonly [table: string]: readonly object[] }

/** Work that is to follow a commit. */
export interface Job {
  readonly name: string
  readonly payload: { readonly [key: string]: Json }
}

/** What one call of `commit_record` writes, or nothing of it. */
export interface Save {
  /** `from`: the version that was decided on; equal to `to` where the record was only read. In id order. */
  readonly records: readonly { readonly id: RecordId; readonly from: number; readonly to: number }[]
  readonly inserts: Rows
  readonly updates: Rows
  readonly entries: readonly JournalEntry[]
  readonly keys: readonly {
    readonly person: string
    readonly key: string
    readonly payloadHash: string
    /** The entries that it made: the answer is made of them. */
    readonly answer: readonly { readonly record: RecordId; readonly sequence: number }[]
  }[]
  readonly jobs: readonly Job[]
}

interface Row {
  entity: Entity
  version: number
  readonly made: number
  shopVersion: number | undefined
}

/** What a draft writes: each entity once, as it is at the end. */
export function saveOf(draft: Draft): Save {
  const versionOf = (id: RecordId) => draft.now.get(id)?.record.version ?? 0
  const inserts: { [table: string]: object[] } = {}
  const updates: { [table: string]: object[] } = {}
  for (const { entity, version, made, shopVersion } of rowsOf(draft)) {
    const [owner] = recordsOf(entity)
    const isNew = owner === undefined || !draft.base.get(owner)?.record.versions.has(entity.id)
    const rows = isNew ? inserts : updates
    const isRoot = entity.kind === 'project' || entity.kind === 'shop'
    const recordVersion = isRoot ? versionOf(entity.id) : undefined
    const table = tableOf[entity.kind]
    rows[table] = [...(rows[table] ?? []), { ...entity, version, made, shopVersion, recordVersion }]
  }
  return {
    records: [...draft.base]
      .map(([id, { record }]) => ({ id, from: record.version, to: versionOf(id) }))
      .sort(byId),
    inserts,
    updates,
    entries: draft.taken.flatMap(({ entries }) => entries),
    keys: draft.taken.map(({ ticket, entries }) => ({
      person: ticket.who.person,
      key: ticket.key,
      payloadHash: ticket.payloadHash,
      answer: entries.map(({ record, sequence }) => ({ record, sequence })),
    })),
    jobs: draft.taken.flatMap(({ ticket }) => ticket.jobs),
  }
}

const byId = (a: { readonly id: string }, b: { readonly id: string }) => (a.id < b.id ? -1 : 1)

function rowsOf(draft: Draft): Iterable<Row> {
  const rows = new Map<string, Row>()
  for (const { move } of draft.taken.flatMap(({ moves }) => moves)) {
    for (const entity of move.entities) {
      const row = rows.get(entity.id)
      const owns = recordsOf(entity)[0] === move.record.id
      rows.set(entity.id, {
        entity,
        version: owns ? move.to : (row?.version ?? 0),
        // 0: so far only the other record of a slot has it.
        made: owns ? row?.made || move.to : (row?.made ?? 0),
        shopVersion: entity.kind === 'slot' && !owns ? move.to : row?.shopVersion,
      })
    }
  }
  return rows.values()
}

/** Saves that wait for a connection together go in one call. */
export interface Saver {
  /** @throws {pg.DatabaseError} where the database refuses; other errors where it can't be told whether it was written */
  readonly save: (save: Save) => Promise<void>
}

/**
 * One call at a time: the notice makes commits queue inside the database anyway, and what waits meanwhile goes together. Two
 * at once got a sixth fewer commands through, four a fifth. But a call that takes longer than this, in ms, isn't waited for:
 * an import, or a record that another node holds.
 */
const PATIENCE_MS = 25
/** Most saves in one call. */
const SAVES_IN_CALL = 40

/** Saves of all lanes on their way to the database. `node` names this process to the others. */
export function openSaver(pool: pg.Pool, node: string): Saver {
  const waiting: { save: Save; resolve: () => void; reject: (error: unknown) => void }[] = []
  let waitedFor: unknown

  function next(): void {
    if (waitedFor !== undefined || waiting.length === 0) return
    const together = waiting.splice(0, SAVES_IN_CALL)
    waitedFor = together
    const goOn = () => {
      if (waitedFor !== together) return
      waitedFor = undefined
      next()
    }
    const patience = setTimeout(goOn, PATIENCE_MS)
    void send(together).finally(() => {
      clearTimeout(patience)
      goOn()
    })
  }
  async function send(together: typeof waiting): Promise<void> {
    try {
      await commit(pool, node, merge(together.map(({ save }) => save)))
      for (const { resolve } of together) resolve()
    } catch (error) {
      if (together.length === 1 || !isRefusal(error)) {
        for (const { reject } of together) reject(error)
        return
      }
      // One of them is refused; the others mustn't suffer for it.
      await Promise.all(together.map((one) => send([one])))
    }
  }
  return {
    save: (save) =>
      new Promise((resolve, reject) => {
        waiting.push({ save, resolve, reject })
        next()
      }),
  }
}

/** One call; the database writes all or nothing, and tells the other nodes. */
export async function commit(db: Queryable, node: string, save: Save): Promise<void> {
  const { records, ...rest } = save
  const moved = records.filter(({ from, to }) => to > from)
  const known = moved.filter(({ from }) => from > 0)
  const message = {
    ...rest,
    records: records.map(({ id }) => id),
    projects: known.filter(({ id }) => id.startsWith('prj_')),
    shops: known.filter(({ id }) => id.startsWith('shp_')),
    reads: records.filter(({ from, to }) => to === from && from > 0),
    notice: JSON.stringify({ node, records: moved.map(({ id, to }) => [id, to]) }),
  }
  await db.query({
    name: 'commit-record',
    text: 'select commit_record($1::jsonb)',
    values: [JSON.stringify(message)],
  })
}

function merge(saves: readonly Save[]): Save {
  const [first] = saves
  if (first !== undefined && saves.length === 1) return first
  return {
    records: saves.flatMap(({ records }) => records).sort(byId),
    inserts: mergeRows(saves.map(({ inserts }) => inserts)),
    updates: mergeRows(saves.map(({ updates }) => updates)),
    entries: saves.flatMap(({ entries }) => entries),
    keys: saves.flatMap(({ keys }) => keys),
    jobs: saves.flatMap(({ jobs }) => jobs),
  }
}

function mergeRows(all: readonly Rows[]): Rows {
  const merged: { [table: string]: object[] } = {}
  for (const rows of all) {
    for (const [table, own] of Object.entries(rows)) {
      const before = merged[table]
      if (before === undefined) merged[table] = [...own]
      else before.push(...own)
    }
  }
  return merged
}

/** Codes after which it isn't known, or doesn't matter, what was asked: the connection or the server went away. */
const AWAY = /^(08|53|57P|58)/
/** Two saves waited for each other, or something else that a second try clears. */
const TRANSIENT: ReadonlySet<string> = new Set(['40001', '40P01', '55P03', SQLSTATE.lostRace])

/** How the database said no. */
export function saidNo(error: unknown): 'away' | 'race' | 'key seen' | 'refused' | 'broken' {
  if (!(error instanceof pg.DatabaseError)) return isNetwork(error) ? 'away' : 'broken'
  const code = error.code ?? ''
  if (AWAY.test(code)) return 'away'
  if (TRANSIENT.has(code)) return 'race'
  if (code === SQLSTATE.keySeen) return 'key seen'
  const isOurs = /^(22|23)/.test(code) || code === SQLSTATE.approvedChange
  return isOurs ? 'refused' : 'broken'
}

const isRefusal = (error: unknown) => saidNo(error) !== 'away'

const isNetwork = (error: unknown): boolean =>
  error instanceof Error &&
  ('syscall' in error || /connection|terminated|timeout/i.test(error.message))
