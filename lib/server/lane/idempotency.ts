import type { RecordId } from '../../journal/journal-entry.ts'
import { joinParts } from '../../journal/parts.ts'
import { canonicalJson } from '../../record/canonical-json.ts'
import type { Json } from '../../record/condition.ts'
import { ShopId } from '../../record/ids.ts'
import { loadRecord, type Queryable, readEntries } from '../load.ts'
import { actorAs } from './actor.ts'
import { doneBy } from './draft.ts'
import { anyMove, type Outcome } from './outcome.ts'
import type { Records } from './records.ts'
import { sha256 } from './sha256.ts'
import type { Ticket } from './ticket.ts'

/** What a key stands for: sending it with something else is an error. */
export const payloadHashOf = (name: string, input: Json): string =>
  sha256(canonicalJson({ name, input }))

/** What was kept of a command that was carried out. */
export interface Kept {
  readonly payloadHash: string
  readonly answer: readonly { readonly record: RecordId; readonly sequence: number }[]
}

const slotOf = (person: string, key: string) => `${person} ${key}`

/** Which of those tickets were carried out before, by person and key; and at which version each record stands. */
export async function lookUpKeys(
  db: Queryable,
  tickets: readonly Pick<Ticket, 'who' | 'key'>[],
  records: readonly RecordId[],
): Promise<{
  readonly keptFor: (ticket: Pick<Ticket, 'who' | 'key'>) => Kept | undefined
  readonly versions: ReadonlyMap<string, number>
}> {
  const { rows } = await db.query<{
    keys: readonly (Kept & { readonly person: string; readonly key: string })[] | null
    versions: { readonly [id: string]: number } | null
  }>({
    name: 'look-up-keys',
    text: `select
      (select json_agg(k) from "IdempotencyKey" k
        where (k."person", k."key") in (select * from unnest($1::text[], $2::text[]))) as keys,
      (select json_object_agg(r."id", r."recordVersion") from (
        select "id", "recordVersion" from "Project" union all select "id", "recordVersion" from "Shop"
      ) r where r."id" = any($3::text[])) as versions`,
    values: [tickets.map(({ who }) => who.person), tickets.map(({ key }) => key), records],
  })
  const kept = new Map((rows[0]?.keys ?? []).map((row) => [slotOf(row.person, row.key), row]))
  return {
    keptFor: ({ who, key }) => kept.get(slotOf(who.person, key)),
    versions: new Map(Object.entries(rows[0]?.versions ?? {})),
  }
}

/** The answer to a command that was carried out before, made of its journal entries. */
export async function answerAgain(
  db: Queryable,
  records: Records,
  ticket: Ticket,
  kept: Kept,
): Promise<Outcome> {
  if (kept.payloadHash !== ticket.payloadHash) return { is: 'key reused' }
  const found = await Promise.all(
    kept.answer.map(async ({ record: id, sequence }) => {
      const [entry] = await readEntries(db, id, sequence - 1, sequence)
      // A node that is behind has no record yet which can tell how to show this.
      const held = await records.get(id)
      const isBehind = held === undefined || held.record.version < sequence
      const current = isBehind ? await loadRecord(db, id) : held
      if (entry === undefined || current === null) throw new Error(`${id} has lost ${sequence}.`)
      const { entities } = joinParts(entry.parts)
      const doings = [doneBy(entry, entities)]
      return {
        entry,
        move: anyMove(current.record, { from: sequence - 1, to: sequence, entities, doings }),
      }
    }),
  )
  const first = found[0]?.entry
  if (first === undefined) throw new Error(`The key ${ticket.key} was kept without an answer.`)
  const shop = ShopId.safeParse(first.record)
  return {
    is: 'done',
    actor: actorAs(ticket.who, first.role, first.party, shop.success ? shop.data : null),
    moves: found.map(({ move }) => move),
    again: true,
  }
}
