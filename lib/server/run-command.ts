import { randomBytes } from 'node:crypto'
import type pg from 'pg'
import type { RecordId } from '../journal/journal-entry.ts'
import type { Actor } from '../record/actor.ts'
import { type CommandKey, idsFrom, type PersonId } from '../record/ids.ts'
import { Instant } from '../record/scalars.ts'
import { freshKey } from './fresh-key.ts'
import { type Memberships, openMemberships, type SessionActor } from './lane/actor.ts'
import { carry, type Yard } from './lane/carry.ts'
import { type Request, readRequest, rootOf } from './lane/command-request.ts'
import { moveOfDelta, movesOf } from './lane/commit-moves.ts'
import { needsOf } from './lane/decide.ts'
import type { Enter } from './lane/enter.ts'
import { openRecordFinder } from './lane/find-record.ts'
import { lookUpKeys, payloadHashOf } from './lane/idempotency.ts'
import { openLanes } from './lane/lane.ts'
import { phoneNeeds } from './lane/on-phone.ts'
import { type AnyMove, invalid, type Outcome } from './lane/outcome.ts'
import { openRecords, type Records } from './lane/records.ts'
import type { Ticket } from './lane/ticket.ts'
import { openTurns } from './lane/turns.ts'
import { type AnyRecord, catchUp, nothingYet, type Queryable } from './load.ts'
import { type Job, openSaver } from './save.ts'

/** A phone's corrected clock may be ahead of ours by this, in ms; what is further ahead hasn't happened. */
const AHEAD_MS = 120_000

/**
 * Attempts at once that hold a connection for their lock and ask for others meanwhile: if every connection were held so,
 * all would wait for ever.
 */
const LOCKED_AT_ONCE = 4

/** The one way to change a record, on this node. */
export type Commands = {
  /** Carries out a command as it came over the wire, or says why not. */
  readonly run: (who: SessionActor, request: unknown) => Promise<Outcome>
  /** The same for the server's own commands: set-up, receipt by a link, the demonstration. */
  readonly enter: Enter
  readonly records: Records
  readonly memberships: {
    readonly of: (person: PersonId) => Promise<Memberships>
    readonly forget: (person: PersonId) => void
  }
  /** Called with each move of a record that this node made or learnt of, in order. Returns how to stop. */
  readonly onCommit: (listener: (move: AnyMove) => void) => () => void
  /** Reads what other nodes wrote to a record that this node holds. */
  readonly catchUp: (id: RecordId) => Promise<void>
  /** Holds nothing any more: everything is read anew. */
  readonly forget: () => void
  /** Names this process to the other nodes. */
  readonly node: string
}

/** What may differ from one node, or test, to another. */
export interface CommandSettings {
  /** The server's clock, in ms. */
  readonly clock?: () => number
  /** Memory for records, in bytes. */
  readonly cacheBytes?: number
}

/** Opens the door on a database. */
export function openCommands(pool: pg.Pool, settings: CommandSettings = {}): Commands {
  const node = randomBytes(8).toString('hex')
  const clock = settings.clock ?? Date.now
  const records = openRecords(pool, settings.cacheBytes)
  const memberships = openMemberships(pool)
  const finder = openRecordFinder(pool)
  const listeners = new Set<(move: AnyMove) => void>()
  const underWay = new Map<string, { readonly hash: string; readonly outcome: Promise<Outcome> }>()

  function tell(move: AnyMove): void {
    for (const entity of move.move.entities) {
      if (entity.kind === 'membership') memberships.forget(entity.person)
    }
    for (const listener of listeners) {
      try {
        listener(move)
      } catch (error) {
        // The change is saved, whatever those who follow it make of it.
        console.error('fettleyard: a change could not be passed on:', error)
      }
    }
  }
  async function catchUpOn(db: Queryable, ids: readonly RecordId[]): Promise<void> {
    for (const id of ids) {
      const known = records.peek(id)
      const delta = known === undefined ? null : await catchUp(db, known)
      if (known === undefined || delta === null) continue
      if (delta.current.record.version === known.record.version) continue
      records.put(delta.current)
      tell(moveOfDelta(known.record.version, delta))
    }
  }

  const yard: Yard = {
    pool,
    db: pool,
    node,
    records,
    saver: openSaver(pool, node),
    lockedTurn: openTurns(LOCKED_AT_ONCE),
    memberships: memberships.of,
    clock,
    newSalt: saltCellar(),
    committed: (draft) => movesOf(draft).forEach(tell),
    catchUp: catchUpOn,
  }
  const lanes = openLanes<RecordId, Ticket>(async (home, tickets) => {
    let open = tickets
    while (open.length > 0) {
      const group = await nextGroup(records, home, open)
      open = open.slice(group.tickets.length)
      await lanes.holdAll(group.shops, () => carry(yard, home, group.shops, group.tickets))
    }
  })

  /** One ticket through its lane. The same key of the same person waits for what becomes of the first. */
  function queue(ticket: Omit<Ticket, 'settle' | 'fail'>): Promise<Outcome> {
    const slot = `${ticket.who.person} ${ticket.key}`
    const before = underWay.get(slot)
    if (before !== undefined) {
      return before.hash === ticket.payloadHash
        ? before.outcome.then((one) => (one.is === 'done' ? { ...one, again: true } : one))
        : Promise.resolve({ is: 'key reused' })
    }
    const outcome = new Promise<Outcome>((settle, fail) => {
      lanes.submit(ticket.home, { ...ticket, settle, fail })
    }).finally(() => underWay.delete(slot))
    underWay.set(slot, { hash: ticket.payloadHash, outcome })
    return outcome
  }

  async function carryOut(
    who: SessionActor,
    request: Request,
    given: {
      readonly as: Actor | null
      readonly now: Instant | null
      readonly jobs: readonly Job[]
    },
    record?: RecordId,
  ): Promise<Outcome> {
    const { name, input, key, happenedAt } = request
    const expected = new Map(Object.entries(request.expected ?? {}))
    const root = rootOf(name)
    const creates = name === 'project.create' || name === 'shop.create'
    const home =
      root === undefined
        ? undefined
        : creates
          ? idsFrom(key)(root)
          : (record ?? (await finder.find(root, [...expected.keys()], input)))
    if (home === undefined) {
      const message =
        'the record that the command is for, as {id: version}: its input names nothing that is there'
      return invalid('expected', message)
    }
    const payloadHash = payloadHashOf(name, input)
    const ticket = { who, home, name, input, key, payloadHash, happenedAt, expected, creates }
    return queue({ ...ticket, ...given })
  }

  return {
    async run(who, raw) {
      const read = readRequest(raw)
      if ('issues' in read) return { is: 'invalid', issues: read.issues }
      const { happenedAt } = read.request
      if (Date.parse(happenedAt) > clock() + AHEAD_MS) {
        return invalid('happenedAt', `a time that is past; here it is ${instantOf(clock())}`)
      }
      const { name, key } = read.request
      const needs =
        who.phone === undefined ? null : phoneNeeds(who, name, await memberships.of(who.person))
      // What was carried out before is only answered again: the answer was lost, and the code isn't kept for another try.
      if (needs !== null && !(await wasCarriedOut(pool, who, key))) return { is: 'needs', needs }
      return carryOut(who, read.request, { as: null, now: null, jobs: [] })
    },
    enter({ who, name, input, record, key = freshKey(), as = null, at = null, jobs = [] }) {
      // The server looks at the record as it is, whichever version that will be.
      const expected = record === undefined ? {} : { [record]: Number.MAX_SAFE_INTEGER }
      const request = { name, input, key, expected, happenedAt: at ?? instantOf(clock()) }
      return carryOut(who, request, { as, now: at, jobs })
    },
    records,
    memberships,
    onCommit(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    catchUp: (id) => lanes.hold(id, () => catchUpOn(pool, [id])),
    forget() {
      for (const id of records.ids()) records.drop(id)
      finder.forget()
    },
    node,
  }
}

/** Whether a key was kept: then nothing can be changed by it any more. */
async function wasCarriedOut(db: Queryable, who: SessionActor, key: CommandKey): Promise<boolean> {
  const { keptFor } = await lookUpKeys(db, [{ who, key }], [])
  return keptFor({ who, key }) !== undefined
}

const SALT_BYTES = 16
const SALTS_AT_ONCE = 256

/** Salts for the journal's parts: asking the system for each by itself took a fiftieth of a command's time. */
function saltCellar(): () => string {
  let salts = ''
  let used = 0
  return () => {
    if (used === salts.length) {
      salts = randomBytes(SALT_BYTES * SALTS_AT_ONCE).toString('hex')
      used = 0
    }
    used += 2 * SALT_BYTES
    return salts.slice(used - 2 * SALT_BYTES, used)
  }
}

const instantOf = (ms: number): Instant => Instant.parse(new Date(ms).toISOString())

interface Group {
  readonly shops: readonly RecordId[]
  readonly tickets: readonly Ticket[]
}

/** The first ticket with the shop books that it needs; or, where it needs none, all that follow and need none either. */
async function nextGroup(
  records: Records,
  home: RecordId,
  open: readonly Ticket[],
): Promise<Group> {
  // A database that can't be read is met again, and dealt with, where the tickets are carried out.
  const current = await records.get(home).catch(() => undefined)
  const { record } = current ?? nothingYet(home)
  const needs = open.map((ticket) => shopsFor(ticket, record))
  const [first] = needs
  if (first !== undefined && first.length > 0) return { shops: first, tickets: open.slice(0, 1) }
  const end = needs.findIndex((shops, at) => at > 0 && shops?.length !== 0)
  return { shops: [], tickets: end === -1 ? open : open.slice(0, end) }
}

/** Undefined where it names what isn't there: a ticket before it may be about to make it. */
function shopsFor(ticket: Ticket, record: AnyRecord): readonly RecordId[] | undefined {
  try {
    return [...new Set(needsOf(ticket, record)?.shops ?? [])].sort()
  } catch {
    // Whatever it is, it is met again where the ticket is decided.
    return undefined
  }
}
