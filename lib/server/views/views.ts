import type { Changed, ProjectView, ShopView } from '../../command/wire.ts'
import type { AsOf, DaySheetSource } from '../../command/wire-access.ts'
import { joinParts } from '../../journal/parts.ts'
import { replayProject, upTo } from '../../journal/replay.ts'
import type { View } from '../../record/actor.ts'
import { entitiesOf, stubsOf } from '../../record/any-entity.ts'
import type { MembershipRole } from '../../record/entities/people.ts'
import type { Entity } from '../../record/entity.ts'
import { ProjectId, ShopId } from '../../record/ids.ts'
import type { ProjectRecord, ShopRecord } from '../../record/project-record.ts'
import { Instant } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { isSeen, seeAs } from '../../see/see.ts'
import { viewOf } from '../../see/view-of.ts'
import { viewerOf } from '../../see/viewer.ts'
import type { Looker } from '../lane/actor.ts'
import { doneBy } from '../lane/draft.ts'
import { type Queryable, readEntries } from '../load.ts'
import type { Names } from '../people/names.ts'
import {
  changedFor,
  type Done,
  epochOf,
  type Move,
  personsIn,
  personsOf,
  shopChangedFor,
  shopEpochOf,
} from './changed-for.ts'
import type { Reading } from './reading.ts'

/** What a signed-in person, or a shop's phone, may read. Null: not there, or not for them; nobody learns which. */
export type Views = {
  readonly project: (who: Looker, id: string) => Promise<ProjectView | null>
  readonly projectChanges: (who: Looker, id: string, after: number) => Promise<Changed | null>
  /** The project as it stood at that moment, by its journal. */
  readonly asOf: (who: Looker, id: string, at: Instant) => Promise<AsOf | null>
  readonly shop: (who: Looker, id: string) => Promise<ShopView | null>
  readonly shopChanges: (who: Looker, id: string, after: number) => Promise<Changed | null>
  readonly daySheet: (who: Looker, id: string) => Promise<DaySheetSource | null>
}

/** Presses told of to who comes back after many. */
const DOINGS_MOST = 100

const now = (): Instant => Instant.parse(new Date().toISOString())

/** The views of the records that `reading` reads. */
export function openViews(db: Queryable, reading: Reading, names: Names): Views {
  async function projectAndView(who: Looker, id: string) {
    const project = ProjectId.safeParse(id)
    if (!project.success) return null
    const record = await reading.project(project.data)
    const view = record === null ? null : await reading.viewOf(who, record)
    return record === null || view === null ? null : { record, view }
  }

  async function shopAndRole(who: Looker, id: string) {
    const shop = ShopId.safeParse(id)
    if (!shop.success) return null
    const record = await reading.shop(shop.data)
    const role = record === null ? null : await reading.roleIn(who, record)
    return record === null || role === null ? null : { record, role }
  }

  async function projectView(
    { person }: Looker,
    record: ProjectRecord,
    view: View,
  ): Promise<ProjectView> {
    const seen = viewOf(record, view)
    const entities = entitiesOf(seen)
    const books = await shopsOf(record)
    const members = membersSeen(record, view, books)
    const persons = personsIn(entities).add(person)
    for (const member of members) persons.add(member.person)
    return {
      record: record.id,
      view,
      person,
      version: record.version,
      epoch: epochOf(record, view.role),
      now: now(),
      entities,
      stubs: stubsOf(seen),
      versions: Object.fromEntries(seen.versions),
      people: await names(persons),
      shops: books.flatMap((book) => all(book.shops)),
      bays: view.role === 'supplier' ? [] : books.flatMap((book) => all(book.bays)),
      members,
    }
  }

  async function shopsOf(record: ProjectRecord): Promise<ShopRecord[]> {
    const ids = all(record.parties).flatMap(({ shop }) => (shop === null ? [] : [shop]))
    const books = await Promise.all([...new Set(ids)].map((id) => reading.shop(id)))
    return books.filter((book) => book !== null)
  }

  async function shopView(
    { person }: Looker,
    record: ShopRecord,
    role: MembershipRole,
  ): Promise<ShopView> {
    const entities = shopEntities(record)
    const own = await reading.projectsOfShop(record.id)
    const guests = all(record.slots).map(({ project }) => project)
    const projects = await Promise.all(
      [...new Set([...own, ...guests])].map((id) => reading.project(id)),
    )
    return {
      record: record.id,
      role,
      person,
      version: record.version,
      epoch: shopEpochOf(record, role),
      now: now(),
      entities,
      people: await names(personsIn(entities).add(person)),
      projects: projects.flatMap((project) => {
        if (project === null) return []
        // Of a car that it only has in a bay a shop knows what stands there, and nothing else.
        const shown = own.includes(project.id) ? null : standingHere(record, project.id)
        return [namesOfProject(project, shown)]
      }),
    }
  }

  /** The journal of a move; of a long one only its end, which is as much as anybody reads. */
  const entriesOf = ({ record, from, to }: Move<ProjectRecord | ShopRecord>) =>
    readEntries(db, record.id, Math.max(from, to - DOINGS_MOST), to)

  return {
    async project(who, id) {
      const found = await projectAndView(who, id)
      return found === null ? null : projectView(who, found.record, found.view)
    },
    async projectChanges(who, id, after) {
      const found = await projectAndView(who, id)
      if (found === null) return null
      const move = moveSince(found.record, entitiesOf(found.record), after)
      const viewer = viewerOf(found.view, found.record)
      const doings = (await entriesOf(move)).flatMap((entry): Done[] => {
        // Who saw nothing of a press when it was made isn't told of it when they see more.
        const left = joinParts(entry.parts).entities
        return left.some((entity) => isSeen(seeAs(viewer, entity))) ? [doneBy(entry, left)] : []
      })
      const told = { ...move, doings }
      return changedFor(found.view, told, await names(personsOf(told)))
    },
    async asOf(who, id, at) {
      const found = await projectAndView(who, id)
      if (found === null) return null
      const entries = upTo(await readEntries(db, found.record.id), at)
      const then = replayProject(found.record.id, entries)
      // What they may see today decides, whoever they were then.
      const viewer = viewerOf(found.view, found.record)
      const seen = entitiesOf(then).map((entity) => seeAs(viewer, entity))
      const entities = seen.filter(isSeen)
      const versions = entities.map(({ id }) => [id, then.versions.get(id) ?? 0])
      const today = await projectView(who, found.record, found.view)
      const view: ProjectView = {
        ...today,
        version: then.version,
        entities,
        stubs: seen.filter((one) => one !== null && 'hidden' in one),
        versions: Object.fromEntries(versions),
        people: await names(personsIn(entities).add(who.person)),
      }
      return { at, view }
    },
    async shop(who, id) {
      const found = await shopAndRole(who, id)
      return found === null ? null : shopView(who, found.record, found.role)
    },
    async shopChanges(who, id, after) {
      const found = await shopAndRole(who, id)
      if (found === null) return null
      const move = moveSince(found.record, shopEntities(found.record), after)
      const entries = await entriesOf(move)
      const doings = entries.map((entry) => doneBy(entry, joinParts(entry.parts).entities))
      const told = { ...move, doings }
      return shopChangedFor(found.role, told, await names(personsOf(told)))
    },
    async daySheet(who, id) {
      const found = await shopAndRole(who, id)
      if (found === null) return null
      const projects: ProjectView[] = []
      for (const project of await reading.projectsOfShop(found.record.id)) {
        const there = await projectAndView(who, project)
        if (there !== null) projects.push(await projectView(who, there.record, there.view))
      }
      return { shop: await shopView(who, found.record, found.role), projects }
    },
  }
}

/** The people of the shops that take part, as far as a manager of the project sees them. */
function membersSeen(
  record: ProjectRecord,
  view: View,
  books: readonly ShopRecord[],
): ProjectView['members'] {
  if (view.role !== 'manager') return []
  const viewer = viewerOf(view, record)
  return books.flatMap((book) => {
    const party = all(record.parties).find(
      ({ shop, leftAt }) => shop === book.id && leftAt === null,
    )
    if (party === undefined) return []
    return all(book.memberships)
      .filter((member) => member.removedAt === null && isSeen(seeAs(viewer, member)))
      .map(({ person }) => ({ person, party: party.id }))
  })
}

/** Everything of a shop book, to all its people. */
const shopEntities = (book: ShopRecord): Entity[] => [
  ...all(book.shops),
  ...all(book.memberships),
  ...all(book.bays),
  ...all(book.slots),
]

/** What changed since a version; a version from the future has lost its way and gets everything. */
function moveSince<Rec extends ProjectRecord | ShopRecord>(
  record: Rec,
  entities: readonly Entity[],
  after: number,
): Move<Rec> {
  const from = after > record.version ? 0 : after
  const changed = entities.filter(({ id }) => (record.versions.get(id) ?? 0) > from)
  return { record, from, to: record.version, entities: changed, doings: [] }
}

const standingHere = (book: ShopRecord, project: ProjectId): ReadonlySet<string> =>
  new Set(all(book.slots).flatMap((slot) => (slot.project === project ? [slot.assembly] : [])))

/** A project's name and its assemblies', or of those in `shown` where not all are to be known. */
const namesOfProject = (
  project: ProjectRecord,
  shown: ReadonlySet<string> | null,
): ShopView['projects'][number] => ({
  id: project.id,
  name: project.projects.rows.get(project.id)?.name ?? '',
  assemblies: Object.fromEntries(
    all(project.assemblies)
      .filter(({ id }) => shown === null || shown.has(id))
      .map(({ id, name }) => [id, name]),
  ),
})
