import type { Changed, Doing, People, ProjectView } from '../command/wire.ts'
import type { View } from '../record/actor.ts'
import type { Bay, Shop } from '../record/entities/people.ts'
import type { PersonId } from '../record/ids.ts'
import { emptyProjectRecord, type ProjectRecord, projectAfter } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { readerOn, shopPhone } from './shop-phone/shop-phone.ts'

/** A project as this phone holds it: the record as its view shows it, and how fresh that is. */
export interface ProjectState {
  readonly record: ProjectRecord
  readonly view: View
  readonly person: PersonId
  readonly people: People
  readonly shops: readonly Shop[]
  readonly bays: readonly Bay[]
  readonly members: ProjectView['members']
  readonly epoch: number
  /** The server's clock when this was last known to be all there is. */
  readonly asOf: Instant
  /** The newest doing of somebody else, to be said aloud; null after a fetch. */
  readonly doing: Said | null
}

/** A doing, with the step it came in: the entities that it left. */
export interface Said {
  readonly doing: Doing
  readonly entities: Changed['entities']
}

/** What a phone holds, from what the server sent at once. */
export function projectStateOf(view: ProjectView): ProjectState {
  const empty = emptyProjectRecord(view.record)
  const { version, entities, stubs } = view
  const record = projectAfter(empty, { version, entities, stubs })
  return {
    record: { ...record, versions: new Map(Object.entries(view.versions)) },
    view: view.view,
    person: view.person,
    people: view.people,
    shops: view.shops,
    bays: view.bays,
    members: view.members,
    epoch: view.epoch,
    asOf: view.now,
    doing: null,
  }
}

/** How a change meets what is held: it follows on it, is known already, or something between was lost. */
export type Meets = 'follows' | 'known' | 'gap'

/** Tells how a change meets a version and an epoch. */
export function meets(
  held: { readonly version: number; readonly epoch: number },
  changed: Pick<Changed, 'from' | 'to' | 'epoch'>,
): Meets {
  if (changed.epoch !== held.epoch) return 'gap'
  if (changed.to <= held.version) return 'known'
  return changed.from <= held.version ? 'follows' : 'gap'
}

/** The project after a change that follows on it; what the reader did themself is not said to them. */
export function projectStateAfter(
  state: ProjectState,
  changed: Changed,
  now: Instant,
): ProjectState {
  const { to: version, entities, stubs } = changed
  const reader = readerOn(shopPhone(), state.person)
  const others = changed.doings.filter((doing) => doing.person !== reader)
  const doing = others.at(-1)
  return {
    ...state,
    record: projectAfter(state.record, { version, entities, stubs }),
    people: { ...state.people, ...changed.people },
    asOf: now,
    doing: doing === undefined ? state.doing : { doing, entities },
  }
}
