import type * as z from 'zod/mini'
import type { Actor } from './actor.ts'
import type { CommandName, ProjectCommandName, ShopCommandName } from './command-names.ts'
import type { Condition } from './condition.ts'
import { plain } from './condition.ts'
import type { Entity } from './entity.ts'
import type { NewId, PartyId, ShopId } from './ids.ts'
import { type InputIssue, inputIssues } from './input-issue.ts'
import type { ProjectRecord, ShopRecord } from './project-record.ts'
import type { Instant, Sha256 } from './scalars.ts'
import { Hidden } from './table.ts'

/** What `decide` may know besides the record: who, when, new ids, the shops' diaries, files that have arrived. */
export interface Context {
  readonly actor: Actor
  /** The server's clock, never earlier than the last entry's. */
  readonly now: Instant
  /** When it happened, by the phone's corrected clock; rules about time use it. */
  readonly happenedAt: Instant
  readonly newId: NewId
  /** Shop books that the command touches or reads. */
  readonly shops: ReadonlyMap<ShopId, ShopRecord>
  /** SHA-256 of the named files whose bytes have arrived. */
  readonly files: ReadonlySet<Sha256>
}

/** The entities as they will be. */
export interface Changes {
  readonly outcome: 'changes'
  readonly entities: readonly Entity[]
}
/** An expected no: every condition that is not met. Nothing was changed. */
export interface Refusal {
  readonly outcome: 'refusal'
  readonly conditions: readonly Condition[]
}
/** What a command came to. */
export type Decided = Changes | Refusal

/** A change of those entities. */
export const changes = (...entities: Entity[]): Changes => ({ outcome: 'changes', entities })
/** A refusal for those conditions. */
export const refusal = (...conditions: Condition[]): Refusal => ({ outcome: 'refusal', conditions })

/** What a press came to: a decision, or why none was reached. */
export type Applied =
  | Decided
  | { readonly outcome: 'unknown'; readonly conditions: readonly Condition[] }
  | { readonly outcome: 'invalid'; readonly issues: readonly InputIssue[] }
  | { readonly outcome: 'forbidden' }

/** A change of one record: what it takes, who may, and what becomes of the record. */
export interface Definition<Name extends CommandName, Rec, Schema extends z.ZodMiniType> {
  readonly name: Name
  readonly input: Schema
  /** @throws {NoSuchEntity} where the input names what isn't in the record. */
  readonly may: (actor: Actor, record: Rec, input: z.infer<Schema>) => boolean
  /** Pure: no clock, no random, no I/O. */
  readonly decide: (record: Rec, input: z.infer<Schema>, ctx: Context) => Decided
  /** Shop books that a project's command changes or reads; they come in `ctx.shops`. */
  readonly shops?: (record: Rec, input: z.infer<Schema>) => readonly ShopId[]
  /** SHA-256 of the files that the input names: it is refused until the bytes of each have arrived. */
  readonly files?: (input: z.infer<Schema>) => readonly Sha256[]
}

/** A command as registry, door and phone use it: the schema's type is no longer needed. */
export interface Command<Name extends CommandName, Rec> {
  readonly name: Name
  readonly input: z.ZodMiniType
  /** Parse, `may`, `decide`, in that order; then the files that the input names. @throws {NoSuchEntity} */
  readonly apply: (raw: unknown, actor: Actor, record: Rec, ctx: Context) => Applied
  /** Shop books and files that a valid input needs; none of an invalid one. */
  readonly needs: (
    raw: unknown,
    record: Rec,
  ) => { readonly shops: readonly ShopId[]; readonly files: readonly Sha256[] }
}
/** A command on a project. */
export type ProjectCommand<Name extends ProjectCommandName = ProjectCommandName> = Command<
  Name,
  ProjectRecord
>
/** A command on a shop book. */
export type ShopCommand<Name extends ShopCommandName = ShopCommandName> = Command<Name, ShopRecord>

const unknownBecause = (entity: string): Condition => ({ ...plain(entity), rule: 'unknown' })

/** A file counts once its bytes have arrived. */
const notArrived = (record: string, named: readonly Sha256[], ctx: Context): Condition[] =>
  [...new Set(named)]
    .filter((sha256) => !ctx.files.has(sha256))
    .map((sha256) => ({ ...plain(record), rule: 'file', sha256 }))

const nothingNeeded = { shops: [], files: [] }

function define<
  Name extends CommandName,
  Rec extends { readonly id: string },
  Schema extends z.ZodMiniType,
>(definition: Definition<Name, Rec, Schema>): Command<Name, Rec> {
  const { name, input: schema, may, decide, shops, files } = definition
  return {
    name,
    input: schema,
    apply(raw, actor, record, ctx) {
      const parsed = schema.safeParse(raw)
      if (!parsed.success) {
        return {
          outcome: 'invalid',
          issues: inputIssues(parsed.error),
        }
      }
      try {
        if (!may(actor, record, parsed.data)) return { outcome: 'forbidden' }
        const decided = decide(record, parsed.data, ctx)
        const unmet = [
          ...(decided.outcome === 'changes' ? [] : decided.conditions),
          ...notArrived(record.id, files?.(parsed.data) ?? [], ctx),
        ]
        if (decided.outcome === 'changes' && unmet.length === 0) return decided
        const hidden = unmet.some((condition) => condition.rule === 'unknown')
        return hidden ? { outcome: 'unknown', conditions: unmet } : refusal(...unmet)
      } catch (error) {
        if (error instanceof Hidden)
          return { outcome: 'unknown', conditions: [unknownBecause(error.entity)] }
        throw error
      }
    },
    needs(raw, record) {
      // Most commands need neither: then the input isn't read for it.
      if (shops === undefined && files === undefined) return nothingNeeded
      const parsed = schema.safeParse(raw)
      if (!parsed.success) return nothingNeeded
      return { shops: shops?.(record, parsed.data) ?? [], files: files?.(parsed.data) ?? [] }
    },
  }
}

/** Defines a command on a project. */
export const defineCommand = <Name extends ProjectCommandName, Schema extends z.ZodMiniType>(
  definition: Definition<Name, ProjectRecord, Schema>,
): ProjectCommand<Name> => define(definition)

/** Defines a command on a shop book. */
export const defineShopCommand = <Name extends ShopCommandName, Schema extends z.ZodMiniType>(
  definition: Definition<Name, ShopRecord, Schema>,
): ShopCommand<Name> => define(definition)

/** The entity that marks a change as *told by phone*, where the lead entered it for `told`; else nothing. */
export function toldBy(
  ctx: Context,
  command: CommandName,
  entity: string,
  told: PartyId | undefined,
  project: ProjectRecord['id'],
): Entity[] {
  if (told === undefined) return []
  return [
    {
      kind: 'told',
      id: ctx.newId('tld'),
      project,
      entity,
      party: told,
      command,
      person: ctx.actor.person,
      at: ctx.happenedAt,
      confirmedAt: null,
      confirmedBy: null,
    },
  ]
}
