import type { Actor, Proof, Role } from '../../record/actor.ts'
import type { MembershipRole, Party } from '../../record/entities/people.ts'
import type { DeviceId, PartyId, PersonId, ShopId } from '../../record/ids.ts'
import type { ProjectRecord, ShopRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { type AnyRecord, isProject, type Queryable } from '../load.ts'
import type { CodeIs } from '../people/hand-codes.ts'

/** Who looks or presses. On a shop's phone `person` is who works there now, or NOBODY. */
export interface Looker {
  readonly person: PersonId
  readonly phone?: { readonly id: DeviceId; readonly shop: ShopId } | undefined
}

/** A person who is signed in, and how they last proved who they are. */
export interface SessionActor extends Looker {
  readonly proof: Proof | null
  readonly provedAt: Instant | null
  /** On a shop's phone, with a signature: how the code that came with it compares. */
  readonly code?: CodeIs | undefined
}

/** Where a person works now, by shop. */
export type Memberships = ReadonlyMap<ShopId, MembershipRole>

/** In which parts a person may act in a record: mostly one, none for a stranger. On a shop's phone: as its hand, in its shop. */
export function actorsOf(
  session: SessionActor,
  record: AnyRecord,
  memberships: Memberships,
): Actor[] {
  const works = session.phone === undefined ? memberships : handAt(session.phone.shop, memberships)
  return isProject(record) ? inProject(session, record, works) : inShop(session, record, works)
}

/** A shared phone lies on a bench: who manages the shop is a hand there as well. */
const handAt = (shop: ShopId, memberships: Memberships): Memberships =>
  new Map(memberships.has(shop) ? [[shop, 'hand' as const]] : [])

/** What a phone of that shop sees, whoever works at it. */
export const anyHandOf = (shop: ShopId): Memberships => new Map([[shop, 'hand']])

function inProject(
  session: SessionActor,
  record: ProjectRecord,
  memberships: Memberships,
): Actor[] {
  // Whoever makes a project does it for a shop.
  if (record.version === 0) {
    return [...memberships].map(([shop, role]) => actorAs(session, role, null, shop))
  }
  const personally = new Set(
    all(record.participants)
      .filter(() => session.phone === undefined)
      .filter(({ person, removedAt }) => person === session.person && removedAt === null)
      .map(({ party }) => party),
  )
  return all(record.parties)
    .filter(({ leftAt }) => leftAt === null)
    .flatMap((party): Actor[] => {
      const member = party.shop === null ? undefined : memberships.get(party.shop)
      const role = member ?? (personally.has(party.id) ? roleIn(party) : undefined)
      return role === undefined ? [] : [actorAs(session, role, party.id, party.shop)]
    })
}

/** A party's person where no shop's book says more: whoever acts for a shop without a book manages it. */
const roleIn = (party: Party): Role => (party.role === 'shop' ? 'manager' : party.role)

function inShop(session: SessionActor, record: ShopRecord, memberships: Memberships): Actor[] {
  const role = memberships.get(record.id)
  return role === undefined ? [] : [actorAs(session, role, null, record.id)]
}

/** The session's person in that part. */
export function actorAs(
  { person, proof, provedAt, phone }: SessionActor,
  role: Role,
  party: PartyId | null,
  shop: ShopId | null,
): Actor {
  const actor = { person, role, party, shop, proof, provedAt }
  return phone === undefined ? actor : { ...actor, device: phone.id }
}

/** How old a person's memberships may be before they are read again, in ms: a removal is felt within two seconds. */
const MEMBERSHIPS_MS = 1000
const PERSONS_MOST = 10_000

/** Looks up where persons work; what it knows is at most a second old, and `forget` makes it read anew at once. */
export function openMemberships(db: Queryable): {
  readonly of: (person: PersonId) => Promise<Memberships>
  readonly forget: (person: PersonId) => void
} {
  const known = new Map<
    PersonId,
    { readonly readMs: number; readonly found: Promise<Memberships> }
  >()
  const read = async (person: PersonId): Promise<Memberships> => {
    const { rows } = await db.query<{ shop: ShopId; role: MembershipRole }>({
      name: 'memberships',
      text: 'select "shop", "role" from "Membership" where "person" = $1 and "removedAt" is null order by "shop"',
      values: [person],
    })
    return new Map(rows.map(({ shop, role }) => [shop, role]))
  }
  return {
    of(person) {
      const before = known.get(person)
      if (before !== undefined && Date.now() - before.readMs < MEMBERSHIPS_MS) return before.found
      if (known.size >= PERSONS_MOST) known.clear()
      const found = read(person)
      known.set(person, { readMs: Date.now(), found })
      found.catch(() => known.delete(person))
      return found
    },
    forget: (person) => void known.delete(person),
  }
}
