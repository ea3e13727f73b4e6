import type { Changed, Doing, People } from '../../command/wire.ts'
import type { Role, View } from '../../record/actor.ts'
import { Role as RoleSchema } from '../../record/actor.ts'
import type { MembershipRole } from '../../record/entities/people.ts'
import type { Entity, Stub } from '../../record/entity.ts'
import type { ProjectRecord, ShopRecord } from '../../record/project-record.ts'
import type { Versions } from '../../record/versions.ts'
import { isSeen, seeAs } from '../../see/see.ts'
import { viewerOf } from '../../see/viewer.ts'

/** Who did what, and which entities it left: whoever sees none of these is not told of it. */
export interface Done {
  readonly doing: Doing
  readonly entities: readonly string[]
}

/** A record's way from one version to another, before it is known who looks. `entities`: as they are at the end of it. */
export type Move<Rec extends ProjectRecord | ShopRecord> = {
  readonly record: Rec
  readonly from: number
  readonly to: number
  readonly entities: readonly Entity[]
  readonly doings: readonly Done[]
}

/** A move as a view may see it; whoever sees none of it still gets the empty step. `names`: of all persons in the move. */
export function changedFor(view: View, move: Move<ProjectRecord>, names: People): Changed {
  const { record, from, to } = move
  const viewer = viewerOf(view, record)
  const entities: Entity[] = []
  const stubs: Stub[] = []
  for (const entity of withDependents(view, record, move.entities)) {
    const seen = seeAs(viewer, entity)
    if (isSeen(seen)) entities.push(seen)
    else if (seen !== null) stubs.push(seen)
  }
  // Presses of a moment travel together; each is for those only who see something of it.
  const ids = new Set<string>(entities.map(({ id }) => id))
  const doings = move.doings
    .filter((done) => done.entities.some((id) => ids.has(id)))
    .map(({ doing }) => doing)
  const people = namesIn(names, entities, doings)
  return {
    record: record.id,
    from,
    to,
    epoch: epochOf(record, view.role),
    entities,
    stubs,
    people,
    doings,
  }
}

/** A move of a shop book: all its people see all of it. */
export function shopChangedFor(
  role: MembershipRole,
  { record, from, to, entities, ...move }: Move<ShopRecord>,
  names: People,
): Changed {
  const epoch = shopEpochOf(record, role)
  const doings = move.doings.map(({ doing }) => doing)
  const people = namesIn(names, entities, doings)
  return { record: record.id, from, to, epoch, entities, stubs: [], people, doings }
}

/** A part that changes its supplier takes its promises along: they come into that supplier's view, or leave it. */
function withDependents(
  view: View,
  record: ProjectRecord,
  entities: readonly Entity[],
): readonly Entity[] {
  if (view.role !== 'supplier') return entities
  const parts = new Set(entities.flatMap((entity) => (entity.kind === 'part' ? [entity.id] : [])))
  if (parts.size === 0) return entities
  const moved = new Set(entities.map(({ id }) => id))
  const promises = [...record.promises.rows.values()].filter(
    ({ id, part }) => parts.has(part) && !moved.has(id),
  )
  return [...entities, ...promises]
}

/**
 * Raised by whatever changes who may see what: a party or a participant that comes, goes or changes. It tells roles apart
 * too, so that somebody who becomes a manager never takes a hand's view for their own.
 */
export function epochOf(record: ProjectRecord, role: Role): number {
  const grants = [...record.parties.rows.keys(), ...record.participants.rows.keys()]
  return stamped(latest(record.versions, grants), role)
}

/** The same of a shop book: its memberships. */
export const shopEpochOf = (record: ShopRecord, role: MembershipRole): number =>
  stamped(latest(record.versions, [...record.memberships.rows.keys()]), role)

const stamped = (version: number, role: Role): number =>
  version * RoleSchema.options.length + RoleSchema.options.indexOf(role)

const latest = (versions: Versions, ids: readonly string[]): number =>
  ids.reduce((last, id) => Math.max(last, versions.get(id) ?? 0), 0)

/** Every person that stands in those entities or did those doings. */
export function personsIn(
  entities: readonly Entity[],
  doings: readonly Pick<Doing, 'person'>[] = [],
): Set<string> {
  const persons = new Set<string>(doings.map(({ person }) => person))
  for (const entity of entities) {
    for (const value of Object.values(entity)) {
      if (typeof value === 'string' && value.startsWith('psn_')) persons.add(value)
    }
  }
  return persons
}

/** Every person that stands in a move. */
export const personsOf = (
  move: Pick<Move<ProjectRecord | ShopRecord>, 'entities' | 'doings'>,
): Set<string> =>
  personsIn(
    move.entities,
    move.doings.map(({ doing }) => doing),
  )

function namesIn(
  names: People,
  entities: readonly Entity[],
  doings: readonly Doing[],
): { readonly [person: string]: string } {
  const found: { [person: string]: string } = {}
  for (const person of personsIn(entities, doings)) {
    const name = names[person]
    if (name !== undefined) found[person] = name
  }
  return found
}
