import { setTimeout as sleep } from 'node:timers/promises'
import pg from 'pg'
import type { RecordId } from '../../journal/journal-entry.ts'
import { type Current, nothingYet, type Queryable } from '../load.ts'
import { commit, type Save, type Saver, saidNo, saveOf } from '../save.ts'
import { refusedByDatabase } from './database-refusal.ts'
import { decideTicket, type Surroundings } from './decide.ts'
import { type Draft, openDraft } from './draft.ts'
import { answerAgain, lookUpKeys } from './idempotency.ts'
import type { Outcome } from './outcome.ts'
import type { Records } from './records.ts'
import type { Ticket } from './ticket.ts'
import type { Turns } from './turns.ts'

/** What carrying tickets out needs. */
export interface Yard extends Surroundings {
  readonly pool: pg.Pool
  readonly node: string
  readonly records: Records
  readonly saver: Saver
  /** Of attempts that take their records for themselves. */
  readonly lockedTurn: Turns
  /** Called after commit, before anybody is answered. */
  readonly committed: (draft: Draft) => void
  /** Brings records up to what other nodes wrote, and tells whoever follows them. The caller holds their lanes. */
  readonly catchUp: (db: Queryable, ids: readonly RecordId[]) => Promise<void>
}

/** Where and how an attempt saves. */
interface Way {
  readonly db: Queryable
  readonly save: (save: Save) => Promise<void>
}

/** After so many lost races the lane takes the records for itself. */
const RACES = 2
/** How often a command is tried again on a database that went away. */
const TRIES = 4
const TRY_AGAIN_MS = 250

/** What became of an attempt; `open`: the tickets that are still to be carried out. */
type Attempt =
  | { readonly ended: 'settled' | 'lost race' | 'away'; readonly open: readonly Ticket[] }
  | {
      readonly ended: 'refused'
      readonly open: readonly Ticket[]
      readonly error: pg.DatabaseError
      readonly draft: Draft
    }

/**
 * Carries out tickets of one record, with the shop books that they need, in order and in as few saves as can be. The caller
 * holds the lanes of all these records. Settles or fails every ticket; never throws.
 */
export async function carry(
  yard: Yard,
  home: RecordId,
  shops: readonly RecordId[],
  tickets: readonly Ticket[],
): Promise<void> {
  const ids = [home, ...shops]
  const pooled: Way = { db: yard.pool, save: yard.saver.save }
  let open = tickets
  let oneByOne = false
  let races = 0
  let away = 0
  while (open.length > 0) {
    const batch = oneByOne ? open.slice(0, 1) : open
    const rest = open.slice(batch.length)
    const attempt = await (races < RACES
      ? attemptOn(yard, pooled, ids, batch, races + away > 0)
      : yard.lockedTurn(() =>
          withRecordsLocked(yard, ids, (way) => attemptOn(yard, way, ids, batch, true)),
        )
    ).catch((error: unknown) => failed(error, batch))
    open = [...attempt.open, ...rest]
    if (attempt.ended === 'settled') away = 0
    else if (attempt.ended === 'lost race') races++
    else if (attempt.ended === 'refused') {
      // Among several it isn't known whose fault it is.
      oneByOne = true
      if (batch.length === 1) {
        settleRefused(attempt.error, attempt.draft, batch)
        open = rest
      }
    } else if (++away < TRIES) await sleep(TRY_AGAIN_MS * away)
    else {
      for (const { settle } of open) settle({ is: 'unavailable' })
      return
    }
  }
}

/** An error outside the save: the database went away while something was read, or something of ours is broken. */
function failed(error: unknown, batch: readonly Ticket[]): Attempt {
  if (saidNo(error) === 'away') return { ended: 'away', open: batch }
  for (const { fail } of batch) fail(error)
  return { ended: 'settled', open: [] }
}

/** Decides the tickets on the records as this node knows them, saves what they change, answers. */
async function attemptOn(
  yard: Yard,
  way: Way,
  ids: readonly RecordId[],
  batch: readonly Ticket[],
  inDoubt: boolean,
): Promise<Attempt> {
  let open = batch
  if (inDoubt) {
    await yard.catchUp(way.db, ids)
    open = await settleKept(yard, way.db, batch)
  }
  const draft = openDraft(await currents(yard, ids, batch))
  const denied: { readonly ticket: Ticket; readonly outcome: Outcome }[] = []
  for (const ticket of open) {
    try {
      const outcome = await decideOn(yard, draft, ids, ticket)
      if (outcome !== 'taken') denied.push({ ticket, outcome })
    } catch (error) {
      if (saidNo(error) === 'away') throw error
      // A fault of ours in one command is no reason to fail the others.
      open = open.filter((other) => other !== ticket)
      ticket.fail(error)
    }
  }
  if (draft.taken.length > 0) {
    try {
      await way.save(saveOf(draft))
    } catch (error) {
      return await unsaved(yard, way.db, error, draft, open)
    }
    for (const current of draft.now.values()) yard.records.put(current)
    yard.committed(draft)
    for (const { ticket, actor, moves } of draft.taken) {
      ticket.settle({ is: 'done', actor, moves, again: false })
    }
  }
  return answerDenied(yard, way.db, draft, denied)
}

async function currents(
  yard: Yard,
  ids: readonly RecordId[],
  batch: readonly Ticket[],
): Promise<Current[]> {
  const [home] = ids
  if (home !== undefined && batch.every(({ creates }) => creates)) {
    const shops = await Promise.all(ids.slice(1).map(yard.records.get))
    return [nothingYet(home), ...shops.filter((current) => current !== undefined)]
  }
  const found = await Promise.all(ids.map(yard.records.get))
  return found.filter((current) => current !== undefined)
}

async function decideOn(
  yard: Yard,
  draft: Draft,
  ids: readonly RecordId[],
  ticket: Ticket,
): Promise<Outcome | 'taken'> {
  const [home] = ids
  const missing = ids.find((id) => !draft.now.has(id))
  if (home === undefined || missing !== undefined) {
    return { is: 'missing', entity: missing ?? ticket.name }
  }
  return decideTicket(draft, ticket, home, yard)
}

async function unsaved(
  yard: Yard,
  db: Queryable,
  error: unknown,
  draft: Draft,
  open: readonly Ticket[],
): Promise<Attempt> {
  switch (saidNo(error)) {
    case 'race':
      return { ended: 'lost race', open }
    case 'key seen':
      return { ended: 'lost race', open: await settleKept(yard, db, open) }
    case 'away':
      return { ended: 'away', open }
    case 'refused':
      if (error instanceof pg.DatabaseError) return { ended: 'refused', open, error, draft }
  }
  throw error
}

/** Answers those that were carried out before; gives back the others. */
async function settleKept(
  yard: Yard,
  db: Queryable,
  tickets: readonly Ticket[],
): Promise<readonly Ticket[]> {
  const { keptFor } = await lookUpKeys(db, tickets, [])
  const others: Ticket[] = []
  for (const ticket of tickets) {
    const kept = keptFor(ticket)
    if (kept === undefined) others.push(ticket)
    else ticket.settle(await answerAgain(db, yard.records, ticket, kept))
  }
  return others
}

/**
 * A no is said only of the newest record, and only to a command that wasn't carried out before: the retry of a start finds
 * the stage in work, which is no reason to refuse it.
 */
async function answerDenied(
  yard: Yard,
  db: Queryable,
  draft: Draft,
  denied: readonly { readonly ticket: Ticket; readonly outcome: Outcome }[],
): Promise<Attempt> {
  if (denied.length === 0) return { ended: 'settled', open: [] }
  const tickets = denied.map(({ ticket }) => ticket)
  const { keptFor, versions } = await lookUpKeys(db, tickets, [...draft.now.keys()])
  const isBehind = [...draft.now].some(
    ([id, { record }]) => record.version < (versions.get(id) ?? 0),
  )
  const open: Ticket[] = []
  for (const { ticket, outcome } of denied) {
    const kept = keptFor(ticket)
    if (kept !== undefined) ticket.settle(await answerAgain(db, yard.records, ticket, kept))
    else if (isBehind) open.push(ticket)
    else ticket.settle(outcome)
  }
  return { ended: open.length > 0 ? 'lost race' : 'settled', open }
}

function settleRefused(error: pg.DatabaseError, draft: Draft, batch: readonly Ticket[]): void {
  const [taken] = draft.taken
  const outcome = taken && refusedByDatabase(error, taken)
  for (const { settle, fail } of batch) {
    if (outcome === undefined) fail(error)
    else settle(outcome)
  }
}

/** Takes the records for this node alone: saves of others wait until `work` is done. */
async function withRecordsLocked(
  yard: Yard,
  ids: readonly RecordId[],
  work: (way: Way) => Promise<Attempt>,
): Promise<Attempt> {
  const client = await yard.pool.connect()
  try {
    for (const id of [...ids].sort()) {
      await client.query('select pg_advisory_lock(hashtextextended($1, 0))', [id])
    }
    const attempt = await work({ db: client, save: (save) => commit(client, yard.node, save) })
    await client.query('select pg_advisory_unlock_all()')
    client.release()
    return attempt
  } catch (error) {
    // The lock goes with the connection.
    client.release(true)
    throw error
  }
}
