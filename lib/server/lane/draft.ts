import { makeEntry } from '../../journal/entry.ts'
import type { JournalEntry, RecordId } from '../../journal/journal-entry.ts'
import type { Actor } from '../../record/actor.ts'
import type { Entity } from '../../record/entity.ts'
import type { Instant } from '../../record/scalars.ts'
import { type Current, nothingYet, recordAfter } from '../load.ts'
import type { Done } from '../views/changed-for.ts'
import { type AnyMove, anyMove } from './outcome.ts'
import { sha256 } from './sha256.ts'
import type { Ticket } from './ticket.ts'

/** A command that was decided and waits to be saved. */
export interface Taken {
  readonly ticket: Ticket
  readonly actor: Actor
  readonly entries: readonly JournalEntry[]
  readonly moves: readonly AnyMove[]
}

/** Records on their way from the version that is saved to the one that will be. */
export interface Draft {
  /** As they were before the first command. */
  readonly base: Map<RecordId, Current>
  /** As they will be after those taken so far. */
  readonly now: Map<RecordId, Current>
  readonly taken: Taken[]
}

/** A draft on those records. */
export const openDraft = (currents: readonly Current[]): Draft => {
  const base = new Map(currents.map((current) => [current.record.id, current]))
  return { base, now: new Map(base), taken: [] }
}

/** Puts a new record under the id that its command gave it. */
export function rehome(draft: Draft, from: RecordId, to: RecordId): void {
  for (const records of [draft.base, draft.now]) {
    records.delete(from)
    records.set(to, nothingYet(to))
  }
}

/** Which records an entity belongs to: a slot to its project and to its bay's shop. */
export function recordsOf(entity: Entity): readonly RecordId[] {
  switch (entity.kind) {
    case 'project':
    case 'shop':
      return [entity.id]
    case 'slot':
      return [entity.project, entity.shop]
    case 'membership':
    case 'bay':
      return [entity.shop]
    default:
      return [entity.project]
  }
}

/** Takes a decided command into the draft: one version and one journal entry more for each record that it touches. */
export function take(
  draft: Draft,
  ticket: Ticket,
  home: RecordId,
  made: { readonly actor: Actor; readonly at: Instant; readonly happenedAt: Instant },
  entities: readonly Entity[],
  newSalt: () => string,
): void {
  const { actor, at, happenedAt } = made
  const touched = new Set([home, ...entities.flatMap(recordsOf)])
  const entries: JournalEntry[] = []
  const moves: AnyMove[] = []
  for (const id of touched) {
    const before = draft.now.get(id)
    if (before === undefined) throw new Error(`${ticket.name} changes ${id} without naming it.`)
    const own = entities.filter((entity) => recordsOf(entity).includes(id))
    const from = before.record.version
    const to = from + 1
    const entry = makeEntry(
      {
        record: id,
        sequence: to,
        at,
        happenedAt,
        actor,
        command: ticket.name,
        key: ticket.key,
        input: ticket.input,
        entities: own,
        previousHash: before.lastHash,
      },
      newSalt,
      sha256,
    )
    const record = recordAfter(before.record, { version: to, entities: own })
    const bytes = before.bytes + sizeOfNew(before, own)
    draft.now.set(id, { record, lastAt: at, lastHash: entry.hash, bytes })
    entries.push(entry)
    moves.push(anyMove(record, { from, to, entities: own, doings: [doneBy(entry, own)] }))
  }
  draft.taken.push({ ticket, actor, entries, moves })
}

const sizeOfNew = ({ record }: Current, entities: readonly Entity[]): number =>
  entities
    .filter(({ id }) => !record.versions.has(id))
    .reduce((sum, entity) => sum + JSON.stringify(entity).length * 4, 0)

/** Who did what, of a journal's entry; `entities`: those that it left. */
export const doneBy = (
  { person, party, command, happenedAt }: JournalEntry,
  entities: readonly Entity[],
): Done => ({
  doing: { person, party, command, at: happenedAt },
  entities: entities.map(({ id }) => id),
})
