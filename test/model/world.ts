import { isDeepStrictEqual } from 'node:util'
import { projectCommands } from '../../lib/command/registry.ts'
import { shopCommands } from '../../lib/command/set-up-commands.ts'
import { makeEntry } from '../../lib/journal/entry.ts'
import { BEFORE_FIRST, type JournalEntry, RecordId } from '../../lib/journal/journal-entry.ts'
import type { Actor } from '../../lib/record/actor.ts'
import type { Applied, ProjectCommand, ShopCommand } from '../../lib/record/command.ts'
import type { CommandName } from '../../lib/record/command-names.ts'
import type { Json } from '../../lib/record/condition.ts'
import type { Entity } from '../../lib/record/entity.ts'
import { CommandKey, idsFrom, ProjectId, ShopId } from '../../lib/record/ids.ts'
import {
  emptyProjectRecord,
  emptyShopRecord,
  type ProjectRecord,
  projectAfter,
  type ShopRecord,
  shopAfter,
} from '../../lib/record/project-record.ts'
import { Instant, Sha256 } from '../../lib/record/scalars.ts'

/** Projects, shop books and their journals, all in memory. */
export interface World {
  readonly now: Instant
  /** Presses so far, refused ones too; the next key comes of it. */
  readonly presses: number
  readonly projects: ReadonlyMap<string, ProjectRecord>
  readonly books: ReadonlyMap<string, ShopRecord>
  readonly journals: ReadonlyMap<string, readonly JournalEntry[]>
}

/** One press on a project or a shop book; `record` is empty where it makes a new one. */
export interface Press {
  readonly record: string
  readonly name: CommandName
  readonly input: { readonly [field: string]: Json }
  readonly actor: Actor
  readonly now: Instant
  readonly happenedAt: Instant
}

/** What became of a press. `faults`: what no command may ever do, whatever it is given. */
export interface Played {
  readonly press: Press
  readonly before: World
  readonly after: World
  readonly outcome: Applied
  readonly entities: readonly Entity[]
  readonly faults: readonly string[]
}

export const emptyWorld = (now: Instant): World => ({
  now,
  presses: 0,
  projects: new Map(),
  books: new Map(),
  journals: new Map(),
})

/** Files whose bytes have arrived, and one whose bytes have not. */
export const arrivedFiles: readonly Sha256[] = ['a', 'b'].map((c) => Sha256.parse(c.repeat(64)))
export const lostFile: Sha256 = Sha256.parse('c'.repeat(64))

const projectByName = new Map<string, ProjectCommand>(Object.entries(projectCommands))
const shopByName = new Map<string, ShopCommand>(Object.entries(shopCommands))

const keyOf = (count: number): CommandKey =>
  CommandKey.parse(`01997000-0000-7000-8000-${count.toString(16).padStart(12, '0')}`)

/** A record that isn't there yet has an id that nothing else has. */
const nowhere = { project: ProjectId.parse('prj_nowhere'), shop: ShopId.parse('shp_nowhere') }

interface Decided {
  readonly outcome: Applied
  readonly shops: readonly string[]
}

function decideOn(world: World, press: Press): Decided {
  const { name, input, actor, now, happenedAt, record } = press
  const context = (shops: readonly ShopId[]) => ({
    actor,
    now,
    happenedAt,
    newId: idsFrom(keyOf(world.presses + 1)),
    shops: new Map(shops.flatMap((id) => pair(id, world.books.get(id)))),
    files: new Set(arrivedFiles),
  })
  const onProject = projectByName.get(name)
  if (onProject !== undefined) {
    const project = world.projects.get(record) ?? emptyProjectRecord(nowhere.project)
    const { shops } = onProject.needs(input, project)
    return { outcome: onProject.apply(input, actor, project, context(shops)), shops }
  }
  const onShop = shopByName.get(name)
  if (onShop === undefined) throw new Error(`There is no command ${name}.`)
  const book = world.books.get(record) ?? emptyShopRecord(nowhere.shop)
  return { outcome: onShop.apply(input, actor, book, context([])), shops: [] }
}

const pair = <K, V>(key: K, value: V | undefined): [K, V][] =>
  value === undefined ? [] : [[key, value]]

/** Whether that person may press that there. */
export const mayPress = (world: World, press: Press): boolean =>
  decideOn(world, press).outcome.outcome !== 'forbidden'

/** Plays one press as the server does: decided, taken in by every record that it touches, written in their journals. */
export function play(before: World, press: Press): Played {
  deepFreeze(press.input)
  const { outcome, shops } = decideOn(before, press)
  const again = decideOn(before, press).outcome
  const faults = isDeepStrictEqual(outcome, again) ? [] : ['decided otherwise the second time']
  const asked = { ...before, presses: before.presses + 1, now: press.now }
  if (outcome.outcome !== 'changes')
    return { press, before, after: asked, outcome, entities: [], faults }
  deepFreeze(outcome)
  const { entities } = outcome
  const home = homeOf(press, entities)
  const touched = new Set([home, ...entities.flatMap(recordsOf)])
  for (const id of touched) {
    if (id !== home && !shops.includes(id)) faults.push(`changes ${id} without naming it`)
  }
  const after = [...touched].reduce((world, id) => taken(world, id, press, entities), asked)
  return { press, before, after, outcome, entities, faults }
}

const homeOf = (press: Press, entities: readonly Entity[]): string =>
  press.record !== ''
    ? press.record
    : (entities.find(({ kind }) => kind === 'project' || kind === 'shop')?.id ?? '')

/** A slot stands in its project and in the book of its bay's shop. */
function recordsOf(entity: Entity): string[] {
  if (entity.kind === 'slot') return [entity.project, entity.shop]
  if (entity.kind === 'bay' || entity.kind === 'membership') return [entity.shop]
  return 'project' in entity ? [entity.project] : [entity.id]
}

function taken(world: World, id: string, press: Press, entities: readonly Entity[]): World {
  const own = entities.filter((entity) => recordsOf(entity).includes(id))
  const journal = world.journals.get(id) ?? []
  const version = journal.length + 1
  const { now, happenedAt, actor, name, input } = press
  const entry = makeEntry(
    {
      record: RecordId.parse(id),
      sequence: version,
      at: now,
      happenedAt,
      actor,
      command: name,
      key: keyOf(world.presses),
      input,
      entities: own,
      previousHash: journal.at(-1)?.hash ?? BEFORE_FIRST,
    },
    () => `salt ${id} ${version}`,
  )
  const journals = new Map(world.journals).set(id, [...journal, entry])
  const step = { version, entities: own }
  if (id.startsWith('prj_')) {
    const record = world.projects.get(id) ?? emptyProjectRecord(ProjectId.parse(id))
    const projects = new Map(world.projects).set(id, projectAfter(record, step))
    return { ...world, projects, journals }
  }
  const book = world.books.get(id) ?? emptyShopRecord(ShopId.parse(id))
  return { ...world, books: new Map(world.books).set(id, shopAfter(book, step)), journals }
}

/** What is frozen can't be changed unseen: strict mode throws. */
function deepFreeze(value: unknown): void {
  if (typeof value !== 'object' || value === null || Object.isFrozen(value)) return
  Object.freeze(value)
  for (const inner of Object.values(value)) deepFreeze(inner)
}

/** The instant so many hours after another. */
export const hoursFrom = (instant: Instant, hours: number): Instant =>
  Instant.parse(new Date(Date.parse(instant) + Math.round(hours * 3_600_000)).toISOString())
