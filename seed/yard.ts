import { newKey } from '../lib/live/new-key.ts'
import type { CommandName } from '../lib/record/command-names.ts'
import type { Json } from '../lib/record/condition.ts'
import type { Entity } from '../lib/record/entity.ts'
import type { PersonId, ProjectId, ShopId } from '../lib/record/ids.ts'
import {
  emptyProjectRecord,
  type ProjectRecord,
  projectAfter,
} from '../lib/record/project-record.ts'
import type { Instant, Sha256 } from '../lib/record/scalars.ts'
import { type Calendar, calendarAt } from './calendar.ts'
import { byRecord, projectOf } from './records.ts'
import type { Stage } from './seam.ts'

/** What a scene of the demonstration presses, and for which record where the input names nothing in it. */
export interface Press {
  readonly at: Instant
  /** The name of the person who presses. */
  readonly who: string
  readonly name: CommandName
  readonly input: Json
  readonly record?: ProjectId | ShopId
}

/** Where the scenes play: the people, the shops, and every project as it stands after each press. */
export interface Yard {
  readonly calendar: Calendar
  readonly people: Map<string, PersonId>
  readonly shops: Map<string, ShopId>
  /** Bays by `shop/bay`. */
  readonly bays: Map<string, { readonly shop: ShopId; readonly bay: string }>
  readonly person: (name: string) => PersonId
  readonly press: (press: Press) => Promise<readonly Entity[]>
  readonly keep: (project: ProjectId, bytes: Uint8Array, who: string) => Promise<Sha256>
  readonly record: (project: ProjectId) => ProjectRecord
}

/** A scene: what happens then, once everything before it has happened. */
export interface Scene {
  readonly at: Instant
  readonly play: (yard: Yard) => Promise<unknown>
}

/** The yard on that stage; what it presses comes back into its records. */
export function openYard(stage: Stage): Yard {
  const records = new Map<ProjectId, ProjectRecord>()
  const people = new Map<string, PersonId>()
  const person = (name: string) => known(people, name)
  const record = (project: ProjectId) => records.get(project) ?? emptyProjectRecord(project)
  return {
    calendar: calendarAt(stage.now),
    people,
    shops: new Map(),
    bays: new Map(),
    person,
    record,
    keep: (project, bytes, who) => stage.keep(project, bytes, person(who)),
    async press({ who, ...press }) {
      const key = newKey(Date.parse(press.at))
      const entities = await stage.play({ ...press, person: person(who), key })
      for (const [project, changed] of byRecord(entities, projectOf)) {
        const before = record(project)
        records.set(
          project,
          projectAfter(before, { version: before.version + 1, entities: changed }),
        )
      }
      return entities
    },
  }
}

/** What the scenes know by that name. @throws where nobody made it yet */
export function known<T>(map: ReadonlyMap<string, T>, name: string): T {
  const found = map.get(name)
  if (found === undefined) throw new Error(`${name} isn’t in the demonstration yet`)
  return found
}
