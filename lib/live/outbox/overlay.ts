import type { Actor, View } from '../../record/actor.ts'
import type { Applied, Context } from '../../record/command.ts'
import type { Entity } from '../../record/entity.ts'
import { CommandKey, idsFrom, NOBODY, type PersonId, type ShopId } from '../../record/ids.ts'
import {
  type ProjectRecord,
  projectAfter,
  type ShopRecord,
  shopAfter,
} from '../../record/project-record.ts'
import { Instant } from '../../record/scalars.ts'
import { isSeen, seeAs } from '../../see/see.ts'
import { viewerOf } from '../../see/viewer.ts'
import type { ProjectState } from '../project-state.ts'
import type { ShopState } from '../shop-state.ts'
import { projectCommandHere, shopCommandHere } from './commands-here.ts'
import type { Queued } from './unsent-store.ts'

/** A press that isn't in the record yet. */
export interface Pressed {
  readonly item: Queued
  /** Where the server has said yes already: from which version on each record holds it. */
  readonly until: { readonly [record: string]: number } | null
}

/** A record as it will be, and which entities stand so only by what isn't sent. */
export interface Overlaid<State> {
  readonly state: State
  readonly unsent: ReadonlySet<string>
}

/** The shop book that this phone holds, for what a project's command asks of it. */
export type BookOf = (shop: ShopId) => ShopRecord | undefined

/** Of what was pressed on a record that the server has not answered, or whose answer has not come into it. */
const openOn = (pressed: readonly Pressed[], record: string, version: number): readonly Queued[] =>
  pressed
    .filter(({ item, until }) =>
      until === null ? item.lanes.includes(record) : (until[record] ?? 0) > version,
    )
    .map(({ item }) => item)

function contextOf(item: Queued, actor: Actor, shops: Context['shops']): Context {
  const happenedAt = Instant.parse(item.request.happenedAt)
  const newId = idsFrom(CommandKey.parse(item.request.key))
  return { actor, now: happenedAt, happenedAt, newId, shops, files: new Set(item.files) }
}

/**
 * What a guess can't be made of changes nothing: a rule that met what this view may not see, a bay whose book isn't here, a no that
 * may be older than the record. The press is shown as waiting, and the server says what became of it.
 */
function guessed(apply: () => Applied): readonly Entity[] {
  try {
    const applied = apply()
    return applied.outcome === 'changes' ? applied.entities : []
  } catch {
    // It names what isn't on this phone, or worse: a guess never takes a screen down.
    return []
  }
}
/** What came of a press as the server will show it: whoever presses may not see all that they set going. */
function withSeen(record: ProjectRecord, view: View, entities: readonly Entity[]): ProjectRecord {
  const { version } = record
  const viewer = viewerOf(view, projectAfter(record, { version, entities }))
  const seen = entities.map((entity) => seeAs(viewer, entity)).filter((one) => one !== null)
  const stubs = seen.filter((one) => 'hidden' in one)
  return projectAfter(record, { version, entities: seen.filter(isSeen), stubs })
}

/** Whose view a press belongs to: on a shop's phone the view is nobody's, and each of its hands presses in it. */
const isOf = ({ device, person }: Queued, reader: PersonId): boolean =>
  (device === undefined ? person : NOBODY) === reader

/** A project with all that was pressed on it and not sent, by the same rules as on the server. */
export function projectOverlaid(
  base: ProjectState,
  pressed: readonly Pressed[],
  bookOf: BookOf,
): Overlaid<ProjectState> {
  const unsent = new Set<string>()
  let { record } = base
  const { party, role } = base.view
  for (const item of openOn(pressed, record.id, record.version)) {
    const command = projectCommandHere(item.request.name)
    if (command === undefined || !isOf(item, base.person)) continue
    const entities = guessed(() => {
      const shops = new Map<ShopId, ShopRecord>()
      for (const shop of command.needs(item.request.input, record).shops) {
        const book = bookOf(shop)
        if (book === undefined) return { outcome: 'unknown', conditions: [] }
        shops.set(shop, book)
      }
      const shop = record.parties.rows.get(party)?.shop ?? null
      const actor = { person: item.person, role, party, shop, proof: null, provedAt: null }
      return command.apply(item.request.input, actor, record, contextOf(item, actor, shops))
    })
    if (entities.length === 0) continue
    record = withSeen(record, base.view, entities)
    for (const entity of entities) unsent.add(entity.id)
  }
  return { state: record === base.record ? base : { ...base, record }, unsent }
}

/** A shop book with all that was pressed on it and not sent. */
export function shopOverlaid(base: ShopState, pressed: readonly Pressed[]): Overlaid<ShopState> {
  const unsent = new Set<string>()
  let { book } = base
  for (const item of openOn(pressed, book.id, book.version)) {
    const command = shopCommandHere(item.request.name)
    if (command === undefined || !isOf(item, base.person)) continue
    const actor: Actor = {
      person: item.person,
      role: base.role,
      party: null,
      shop: book.id,
      proof: null,
      provedAt: null,
    }
    const shops = new Map([[book.id, book]])
    const entities = guessed(() =>
      command.apply(item.request.input, actor, book, contextOf(item, actor, shops)),
    )
    if (entities.length === 0) continue
    book = shopAfter(book, { version: book.version, entities })
    for (const entity of entities) unsent.add(entity.id)
  }
  return { state: book === base.book ? base : { ...base, book }, unsent }
}

/** SHA-256 of the files that a command names, to be sent before it. */
export function filesNamed(
  request: Queued['request'],
  project: ProjectState | null,
): Queued['files'] {
  if (project === null) return []
  try {
    return projectCommandHere(request.name)?.needs(request.input, project.record).files ?? []
  } catch {
    // Which shop books it needs can't be told here; then the server asks for the files.
    return []
  }
}

/** The records that a command touches: its own first, then the shop books that it changes or reads. */
export function lanesOf(
  request: Queued['request'],
  project: ProjectState | null,
  home: string,
): readonly string[] {
  if (project === null) return [home]
  try {
    const needs = projectCommandHere(request.name)?.needs(request.input, project.record)
    return [...new Set([home, ...(needs?.shops ?? [])])]
  } catch {
    return [home]
  }
}
