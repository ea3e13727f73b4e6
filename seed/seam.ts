import type { CommandName } from '../lib/record/command-names.ts'
import type { Json } from '../lib/record/condition.ts'
import type { Entity } from '../lib/record/entity.ts'
import type { CommandKey, PersonId, ProjectId, ShopId } from '../lib/record/ids.ts'
import type { Instant, Sha256 } from '../lib/record/scalars.ts'

/** One press of the demonstration: who pressed what, and when that was. */
export interface Played {
  readonly person: PersonId
  readonly name: CommandName
  readonly input: Json
  /** The project or shop book that it is for, where the input names nothing that is in it (a new party, bay, member). */
  readonly record?: ProjectId | ShopId
  /** The ids of what it makes derive from this (`idsFrom`). */
  readonly key: CommandKey
  /** The server's clock and the phone's alike; never earlier than the press before it. */
  readonly at: Instant
}

/** What the running server lends to the demonstration. */
export interface Stage {
  /** Today's clock: dates of the demonstration count from it. */
  readonly now: Instant
  /** Makes an account that one press signs in as. A shop of the demonstration is opened with `demo: true`. */
  readonly person: (name: string, email: string) => Promise<PersonId>
  /** Keeps a picture or a paper of a project, as an upload does; what names it counts from then on. */
  readonly keep: (project: ProjectId, bytes: Uint8Array, by: PersonId) => Promise<Sha256>
  /** Plays one press and gives what it changed. @throws where it was refused, with the reason in words */
  readonly play: (played: Played) => Promise<readonly Entity[]>
  /** Tells how far it is. */
  readonly progress: (done: number, total: number, message: string) => void
}

/** `seed/load.ts` exports one of these as `loadDemonstration`. */
export type LoadDemonstration = (stage: Stage) => Promise<void>
