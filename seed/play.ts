import { createHash } from 'node:crypto'
import { projectCommands } from '../lib/command/registry.ts'
import { shopCommands } from '../lib/command/set-up-commands.ts'
import { newKey } from '../lib/live/new-key.ts'
import type { Applied, Command, Context } from '../lib/record/command.ts'
import type { CommandName } from '../lib/record/command-names.ts'
import type { MembershipRole } from '../lib/record/entities/people.ts'
import type { Entity } from '../lib/record/entity.ts'
import { idsFrom, type PersonId, type ProjectId, type ShopId } from '../lib/record/ids.ts'
import {
  emptyProjectRecord,
  emptyShopRecord,
  type ProjectRecord,
  projectAfter,
  type ShopRecord,
  shopAfter,
} from '../lib/record/project-record.ts'
import { type Instant, Sha256 } from '../lib/record/scalars.ts'
import { all } from '../lib/record/table.ts'
import { actorsOf, type SessionActor } from '../lib/server/lane/actor.ts'
import { byRecord, projectOf } from './records.ts'
import type { Played, Stage } from './seam.ts'

/** A stage without a server: the same commands on records in memory, whose state can be looked at. */
export interface MemoryStage extends Stage {
  readonly projects: Map<ProjectId, ProjectRecord>
  readonly books: Map<ShopId, ShopRecord>
  readonly people: Map<string, PersonId>
  /** What a press answers, nothing changed. */
  readonly answer: (played: Played) => Applied
  readonly messages: string[]
}

const onProjects: { readonly [name: string]: Command<CommandName, ProjectRecord> } = projectCommands
const onShops: { readonly [name: string]: Command<CommandName, ShopRecord> } = shopCommands

/** An empty one at that time. */
export function memoryStage(now: Instant): MemoryStage {
  const projects = new Map<ProjectId, ProjectRecord>()
  const books = new Map<ShopId, ShopRecord>()
  const people = new Map<string, PersonId>()
  const files = new Map<ProjectId, Set<Sha256>>()

  const memberships = (person: PersonId): ReadonlyMap<ShopId, MembershipRole> =>
    new Map(
      [...books.values()].flatMap((book) =>
        all(book.memberships)
          .filter((member) => member.person === person && member.removedAt === null)
          .map((member) => [book.id, member.role] as const),
      ),
    )

  function answer(played: Played): Applied {
    const { name, input, at, person, key } = played
    const session: SessionActor = { person, proof: 'demonstration', provedAt: at }
    const newId = idsFrom(key)
    const context = (actor: Context['actor'], project: ProjectId | null): Context => ({
      actor,
      now: at,
      happenedAt: at,
      newId: idsFrom(key),
      shops: books,
      files: (project === null ? undefined : files.get(project)) ?? new Set(),
    })
    const firstOf = (tries: readonly (() => Applied)[]): Applied =>
      tries.reduce<Applied>((before, next) => (before.outcome === 'forbidden' ? next() : before), {
        outcome: 'forbidden',
      })
    const onProject = onProjects[name]
    if (onProject !== undefined) {
      const record = projectNamed(played) ?? emptyProjectRecord(newId('prj'))
      return firstOf(
        actorsOf(session, record, memberships(person)).map(
          (actor) => () => onProject.apply(input, actor, record, context(actor, record.id)),
        ),
      )
    }
    const onShop = onShops[name]
    if (onShop === undefined) throw new Error(`there is no command ${name}`)
    const book = bookNamed(played) ?? emptyShopRecord(newId('shp'))
    const founder = { ...session, role: 'manager', party: null, shop: null } as const
    const actors = name === 'shop.create' ? [founder] : actorsOf(session, book, memberships(person))
    return firstOf(
      actors.map((actor) => () => onShop.apply(input, actor, book, context(actor, null))),
    )
  }

  const projectNamed = ({ record }: Played): ProjectRecord | undefined =>
    [...projects.values()].find(({ id }) => id === record)
  const bookNamed = ({ record }: Played): ShopRecord | undefined =>
    [...books.values()].find(({ id }) => id === record)

  function take(entities: readonly Entity[]): void {
    for (const [id, changed] of byRecord(entities, projectOf)) {
      const before = projects.get(id) ?? emptyProjectRecord(id)
      projects.set(id, projectAfter(before, { version: before.version + 1, entities: changed }))
    }
    for (const [id, changed] of byRecord(entities, bookOf)) {
      const before = books.get(id) ?? emptyShopRecord(id)
      books.set(id, shopAfter(before, { version: before.version + 1, entities: changed }))
    }
  }

  const messages: string[] = []
  return {
    now,
    projects,
    books,
    people,
    messages,
    answer,
    person(name) {
      const id = idsFrom(newKey(Date.parse(now)))('psn')
      people.set(name, id)
      return Promise.resolve(id)
    },
    keep(project, bytes) {
      const sha256 = Sha256.parse(createHash('sha256').update(bytes).digest('hex'))
      files.set(project, (files.get(project) ?? new Set()).add(sha256))
      return Promise.resolve(sha256)
    },
    play(played) {
      const applied = answer(played)
      if (applied.outcome !== 'changes')
        return Promise.reject(
          new Error(
            `${played.name} at ${played.at} was not done: ${JSON.stringify(applied)} — ${JSON.stringify(played.input)}`,
          ),
        )
      take(applied.entities)
      return Promise.resolve(applied.entities)
    },
    progress: (_done, _total, message) => void messages.push(message),
  }
}

const bookOf = (entity: Entity): ShopId | null => {
  if (entity.kind === 'shop') return entity.id
  const inBook = entity.kind === 'slot' || entity.kind === 'membership' || entity.kind === 'bay'
  return inBook ? entity.shop : null
}
