import type { RecordId } from '../../journal/journal-entry.ts'
import { joinParts } from '../../journal/parts.ts'
import type { Actor } from '../../record/actor.ts'
import type { Applied, Context } from '../../record/command.ts'
import { type Condition, plain } from '../../record/condition.ts'
import type { Entity } from '../../record/entity.ts'
import { idsFrom, type NewId, type ShopId } from '../../record/ids.ts'
import type { ShopRecord } from '../../record/project-record.ts'
import { Instant, Sha256 } from '../../record/scalars.ts'
import { NoSuchEntity } from '../../record/table.ts'
import {
  type AnyRecord,
  type Current,
  isProject,
  type Queryable,
  readEntriesOfOthers,
  recordIdOf,
} from '../load.ts'
import { actorsOf, type Memberships } from './actor.ts'
import { type Draft, recordsOf, rehome, take } from './draft.ts'
import type { Outcome } from './outcome.ts'
import { projectCommand, shopCommand, type Ticket } from './ticket.ts'

/** What deciding needs besides the record. */
export interface Surroundings {
  readonly db: Queryable
  readonly memberships: (person: Ticket['who']['person']) => Promise<Memberships>
  /** The server's clock, in ms. */
  readonly clock: () => number
  readonly newSalt: () => string
}

/** Shop books and files that a ticket needs. @throws {NoSuchEntity} */
export function needsOf(ticket: Ticket, record: AnyRecord) {
  return isProject(record)
    ? projectCommand(ticket.name)?.needs(ticket.input, record)
    : shopCommand(ticket.name)?.needs(ticket.input, record)
}

/**
 * Decides a ticket on the draft and takes it in where it changes something.
 * @returns what to answer where it doesn't: only after its key was looked up, for it may have been carried out before
 */
export async function decideTicket(
  draft: Draft,
  ticket: Ticket,
  home: RecordId,
  around: Surroundings,
): Promise<Outcome | 'taken'> {
  const current = draft.now.get(home)
  if (current === undefined) return { is: 'missing', entity: home }
  try {
    const { record } = current
    const actors = await actorsFor(ticket, record, around)
    if (actors.length === 0) return { is: 'missing', entity: home }
    const at = nowOf(draft, ticket, around)
    const happenedAt = first(ticket.happenedAt, at)
    const shops = shopsIn(draft)
    const files = await arrived(around.db, home, needsOf(ticket, record)?.files ?? [])
    let denied: Outcome = { is: 'forbidden' }
    for (const actor of actors) {
      const ids = minting(ticket)
      const context: Context = { actor, now: at, happenedAt, newId: ids.newId, shops, files }
      const applied = apply(ticket, actor, record, context)
      if (applied.outcome === 'forbidden') continue
      const { entities } = applied.outcome === 'changes' ? applied : { entities: [] }
      if (applied.outcome !== 'changes') {
        denied = denial(applied, actor, record)
        break
      }
      // Ids come of the key: one that is here already means that the key is another person's.
      if ([...ids.made].some((id) => record.versions.has(id))) return { is: 'key reused' }
      const stale = await staleConditions(draft, ticket, entities, around.db)
      if (stale.length > 0) return { is: 'refused', actor, record, conditions: stale }
      const root = ticket.creates ? rootIn(entities) : undefined
      if (root !== undefined && root !== home) rehome(draft, home, root)
      take(draft, ticket, root ?? home, { actor, at, happenedAt }, entities, around.newSalt)
      return 'taken'
    }
    return denied
  } catch (error) {
    if (error instanceof NoSuchEntity) return { is: 'missing', entity: error.entity }
    throw error
  }
}

async function actorsFor(
  ticket: Ticket,
  record: AnyRecord,
  around: Surroundings,
): Promise<readonly Actor[]> {
  if (ticket.as !== null) return [ticket.as]
  return actorsOf(ticket.who, record, await around.memberships(ticket.who.person))
}

/** Never earlier than the last entry of any record that it may write to. */
function nowOf(draft: Draft, ticket: Ticket, around: Surroundings): Instant {
  const clock = ticket.now ?? Instant.parse(new Date(around.clock()).toISOString())
  const lasts = [...draft.now.values()].map(({ lastAt }) => lastAt)
  return lasts.reduce(
    (latest, lastAt) => (first(latest, lastAt) === latest ? lastAt : latest),
    clock,
  )
}

/** Instants sort as texts. */
function first(a: Instant, b: Instant): Instant {
  if (a < b) return a
  return b
}

function shopsIn(draft: Draft): ReadonlyMap<ShopId, ShopRecord> {
  const shops = new Map<ShopId, ShopRecord>()
  for (const { record } of draft.now.values()) if (!isProject(record)) shops.set(record.id, record)
  return shops
}

async function arrived(
  db: Queryable,
  home: RecordId,
  named: readonly Sha256[],
): Promise<ReadonlySet<Sha256>> {
  if (named.length === 0) return new Set()
  const { rows } = await db.query<{ sha256: string }>(
    'select "sha256" from "FileBlob" where "project" = $1 and "sha256" = any($2)',
    [home, named],
  )
  return new Set(rows.map(({ sha256 }) => Sha256.parse(sha256)))
}

/** New ids of the ticket's key, remembered. */
function minting({ key }: Ticket): { readonly newId: NewId; readonly made: ReadonlySet<string> } {
  const made = new Set<string>()
  const mint = idsFrom(key)
  return {
    made,
    newId: (prefix) => {
      const id = mint(prefix)
      made.add(id)
      return id
    },
  }
}

function apply(ticket: Ticket, actor: Actor, record: AnyRecord, context: Context): Applied {
  const applied = isProject(record)
    ? projectCommand(ticket.name)?.apply(ticket.input, actor, record, context)
    : shopCommand(ticket.name)?.apply(ticket.input, actor, record, context)
  return applied ?? { outcome: 'forbidden' }
}

function denial(
  applied: Exclude<Applied, { outcome: 'changes' | 'forbidden' }>,
  actor: Actor,
  record: AnyRecord,
): Outcome {
  return applied.outcome === 'invalid'
    ? { is: 'invalid', issues: applied.issues }
    : { is: 'refused', actor, record, conditions: applied.conditions }
}

/** A new record's id is the one that its command gave it. */
const rootIn = (entities: readonly Entity[]): RecordId | undefined =>
  entities
    .filter(({ kind }) => kind === 'project' || kind === 'shop')
    .flatMap(({ id }) => recordIdOf(id) ?? [])[0]

/**
 * Where the person looked at an older version: what they are about to change and somebody else has changed since.
 * Their own changes don't count: those are the ones before it in their outbox.
 */
async function staleConditions(
  draft: Draft,
  { who, expected }: Ticket,
  entities: readonly Entity[],
  db: Queryable,
): Promise<Condition[]> {
  const found: Condition[] = []
  for (const [id, current] of draft.now) {
    const version = expected.get(id)
    if (version === undefined || version >= current.record.version) continue
    const touched = entities
      .filter((entity) => recordsOf(entity).includes(id))
      .filter((entity) => (current.record.versions.get(entity.id) ?? 0) > version)
    if (touched.length === 0) continue
    const byOthers = await changedByOthers(draft, current, version, who.person, db)
    for (const { id: entity } of touched) {
      const changedAt = byOthers.get(entity)
      if (changedAt !== undefined) {
        found.push({ ...plain(entity), rule: 'stale', expected: version, changedAt })
      }
    }
  }
  return found
}

/** Which entities others changed after a version, and when last; the draft's own changes included. */
async function changedByOthers(
  draft: Draft,
  { record }: Current,
  after: number,
  person: string,
  db: Queryable,
): Promise<ReadonlyMap<string, number>> {
  const drafted = draft.taken
    .flatMap(({ entries }) => entries)
    .filter((e) => e.record === record.id)
  const saved = draft.base.get(record.id)?.record.version ?? 0
  const entries = [...(await readEntriesOfOthers(db, record.id, after, saved, person)), ...drafted]
  const changed = new Map<string, number>()
  for (const entry of entries) {
    if (entry.person === person || entry.sequence <= after) continue
    for (const { id } of joinParts(entry.parts).entities) changed.set(id, entry.sequence)
  }
  return changed
}
