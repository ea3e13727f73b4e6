import type { RecordId } from '../../journal/journal-entry.ts'
import type { Actor } from '../../record/actor.ts'
import type { CommandName } from '../../record/command-names.ts'
import type { Json } from '../../record/condition.ts'
import type { CommandKey } from '../../record/ids.ts'
import type { Instant } from '../../record/scalars.ts'
import type { Job } from '../save.ts'
import type { SessionActor } from './actor.ts'
import type { Outcome } from './outcome.ts'

/** A command that the server itself enters for somebody. */
export type Entered = {
  readonly who: SessionActor
  readonly name: CommandName
  readonly input: Json
  /** Where the input names nothing that is in it: a new member, a new party. */
  readonly record?: RecordId
  readonly key?: CommandKey
  /** Where the person has no part in the record yet: set-up, receipt by a link. */
  readonly as?: Actor
  /** Only for the demonstration: when it was, by the server's clock as well. */
  readonly at?: Instant
  /** Work that is to follow: saved with what the command changes, or not at all. */
  readonly jobs?: readonly Job[]
}
/** Runs it through the one door. */
export type Enter = (entered: Entered) => Promise<Outcome>
