import type { RecordId } from '../../journal/journal-entry.ts'
import { type Actor, type Role, View } from '../../record/actor.ts'
import { MembershipRole } from '../../record/entities/people.ts'
import { type PersonId, ProjectId, type ShopId } from '../../record/ids.ts'
import type { ProjectRecord, ShopRecord } from '../../record/project-record.ts'
import type { PrismaClient } from '../generated/client.ts'
import {
  actorsOf,
  anyHandOf,
  type Looker,
  type Memberships,
  type SessionActor,
} from '../lane/actor.ts'
import type { Records } from '../lane/records.ts'
import { type AnyRecord, isProject } from '../load.ts'

/** Where a person has more than one part in a project, they look at it in the part that sees most. */
const BY_REACH: readonly Role[] = ['owner', 'manager', 'hand', 'supplier', 'observer', 'guest']

/** How views, rooms and files reach the records, and what a person is in them. */
export type Reading = {
  /** The record as this node knows it; null where there is none. */
  readonly any: (id: RecordId) => Promise<AnyRecord | null>
  readonly project: (id: ProjectId) => Promise<ProjectRecord | null>
  readonly shop: (id: ShopId) => Promise<ShopRecord | null>
  /** What that person sees of a project; null where they have no part in it. */
  readonly viewOf: (who: Looker, record: ProjectRecord) => Promise<View | null>
  readonly roleIn: (who: Looker, book: ShopRecord) => Promise<MembershipRole | null>
  /** Projects in which a shop takes part, oldest first. */
  readonly projectsOfShop: (shop: ShopId) => Promise<readonly ProjectId[]>
  readonly shopsOf: (who: Looker) => Promise<Memberships>
  readonly projectsOf: (who: Looker) => Promise<readonly ProjectId[]>
}

const PROJECT = { project: true } as const
/** Ids sort by when they were made. */
const inOrder = (rows: readonly { readonly project: string }[]): ProjectId[] =>
  [...new Set(rows.map(({ project }) => ProjectId.parse(project)))].sort()

/** Reads through the records that this node holds. */
export function openReading(
  prisma: PrismaClient,
  records: Records,
  memberships: { readonly of: (person: PersonId) => Promise<Memberships> },
): Reading {
  const get = async (id: RecordId): Promise<AnyRecord | null> =>
    (await records.get(id))?.record ?? null
  // What a shop's phone shows doesn't hang on who works at it.
  const worksOf = async ({ person, phone }: Looker): Promise<Memberships> =>
    phone === undefined ? memberships.of(person) : anyHandOf(phone.shop)
  const partsOf = async (who: Looker, record: AnyRecord): Promise<Actor[]> => {
    const session: SessionActor = { ...who, proof: null, provedAt: null }
    return actorsOf(session, record, await worksOf(who)).sort(
      (a, b) => BY_REACH.indexOf(a.role) - BY_REACH.indexOf(b.role),
    )
  }
  return {
    any: get,
    async project(id) {
      const record = await get(id)
      return record !== null && isProject(record) ? record : null
    },
    async shop(id) {
      const record = await get(id)
      return record === null || isProject(record) ? null : record
    },
    async viewOf(who, record) {
      const seen = View.safeParse((await partsOf(who, record))[0])
      return seen.success ? seen.data : null
    },
    async roleIn(who, book) {
      const role = MembershipRole.safeParse((await partsOf(who, book))[0]?.role)
      return role.success ? role.data : null
    },
    async projectsOfShop(shop) {
      return inOrder(
        await prisma.party.findMany({ where: { shop, leftAt: null }, select: PROJECT }),
      )
    },
    shopsOf: worksOf,
    async projectsOf(who) {
      const shops = [...(await worksOf(who)).keys()]
      const { person } = who
      const [personally, byShop] = await Promise.all([
        who.phone === undefined
          ? prisma.participant.findMany({ where: { person, removedAt: null }, select: PROJECT })
          : [],
        prisma.party.findMany({ where: { shop: { in: shops }, leftAt: null }, select: PROJECT }),
      ])
      return inOrder([...personally, ...byShop])
    },
  }
}
