import { projectCommands } from '../../command/registry.ts'
import { shopCommands } from '../../command/set-up-commands.ts'
import type { RecordId } from '../../journal/journal-entry.ts'
import type { Actor } from '../../record/actor.ts'
import type { Command } from '../../record/command.ts'
import type {
  CommandName,
  ProjectCommandName,
  ShopCommandName,
} from '../../record/command-names.ts'
import type { Json } from '../../record/condition.ts'
import type { CommandKey } from '../../record/ids.ts'
import type { ProjectRecord, ShopRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import type { Job } from '../save.ts'
import type { SessionActor } from './actor.ts'
import type { Outcome } from './outcome.ts'

/** A command on its way through the lane. */
export interface Ticket {
  /** The record that it changes, with or without shop books. */
  readonly home: RecordId
  readonly who: SessionActor
  /** Fixed by the server where the person has no part in the record yet: set-up, receipt by a link. */
  readonly as: Actor | null
  readonly name: CommandName
  readonly input: Json
  readonly key: CommandKey
  readonly payloadHash: string
  readonly happenedAt: Instant
  /** Only the demonstration sets it, on an empty installation. */
  readonly now: Instant | null
  readonly expected: ReadonlyMap<string, number>
  /** Makes the record that it changes. */
  readonly creates: boolean
  /** Work that is to follow it, saved with what it changes. */
  readonly jobs: readonly Job[]
  readonly settle: (outcome: Outcome) => void
  readonly fail: (error: unknown) => void
}

type Named<C> = { readonly [name: string]: C }
const onProjects: Named<Command<ProjectCommandName, ProjectRecord>> = projectCommands
const onShops: Named<Command<ShopCommandName, ShopRecord>> = shopCommands

/** The command of that name on projects, if there is one. */
export const projectCommand = (name: string) =>
  Object.hasOwn(onProjects, name) ? onProjects[name] : undefined
/** The command of that name on shop books, if there is one. */
export const shopCommand = (name: string) =>
  Object.hasOwn(onShops, name) ? onShops[name] : undefined
