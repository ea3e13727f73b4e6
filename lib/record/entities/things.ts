import * as z from 'zod/mini'
import {
  AssemblyId,
  BayId,
  EntityId,
  HandoverId,
  NoteId,
  OpenWindowId,
  PartId,
  PartyId,
  PersonId,
  ProjectId,
  PromiseId,
  ShopId,
  SlotId,
  StageId,
  ToldId,
} from '../ids.ts'
import { CivilDate, Instant, Line, Minor, OptionalText, Sha256, Text } from '../scalars.ts'

/** A physical thing that is worked on, moved or fitted. A lot counts its pieces; `host` is what it is fitted to. */
export const Assembly = z.object({
  kind: z.literal('assembly'),
  id: AssemblyId,
  project: ProjectId,
  name: Line,
  pieces: z.int().check(z.minimum(1)),
  custodian: PartyId,
  since: Instant,
  host: z.nullable(AssemblyId),
  /** It holds fuel: no hot work while it is on. */
  holdsFuel: z.boolean(),
})
export type Assembly = Readonly<z.infer<typeof Assembly>>

/**
 * Assemblies change custody: prepared, released by one, received (or refused) by the other.
 * Custody moves on receipt only. `receivedByName` and `signature` (an SVG path) are of somebody without an account.
 */
export const Handover = z.object({
  kind: z.literal('handover'),
  id: HandoverId,
  project: ProjectId,
  assemblies: z.array(AssemblyId),
  from: PartyId,
  to: PartyId,
  stage: z.nullable(StageId),
  state: z.enum(['prepared', 'released', 'received', 'refused', 'taken back']),
  condition: OptionalText,
  care: OptionalText,
  pieces: z.nullable(z.int().check(z.minimum(1))),
  files: z.array(Sha256),
  preparedAt: Instant,
  releasedAt: z.nullable(Instant),
  releasedBy: z.nullable(PersonId),
  receivedAt: z.nullable(Instant),
  receivedBy: z.nullable(PersonId),
  receivedByName: z.nullable(Line),
  signature: z.nullable(
    z.string().check(z.maxLength(20_000), z.regex(/^[MLml0-9 .,-]*$/, 'an SVG path of M and L')),
  ),
  receivedPieces: z.nullable(z.int().check(z.minimum(0))),
  outcome: z.nullable(z.enum(['accepted', 'accepted with remarks', 'refused'])),
  remarks: z.nullable(OptionalText),
  receivedFiles: z.array(Sha256),
})
export type Handover = Readonly<z.infer<typeof Handover>>

/** Something bought or made to order, needed by `stages`. */
export const Part = z.object({
  kind: z.literal('part'),
  id: PartId,
  project: ProjectId,
  name: Line,
  number: z.nullable(Line),
  party: PartyId,
  supplier: z.nullable(PartyId),
  stages: z.array(StageId),
  state: z.enum(['wanted', 'ordered', 'arrived', 'inspected', 'rejected']),
  price: z.nullable(Minor),
  wantedAt: Instant,
  orderedAt: z.nullable(Instant),
  arrivedAt: z.nullable(Instant),
  inspectedAt: z.nullable(Instant),
  inspectedBy: z.nullable(PersonId),
  remark: z.nullable(OptionalText),
  withdrawnAt: z.nullable(Instant),
})
export type Part = Readonly<z.infer<typeof Part>>

/** A day that was promised for a part. Each promise is kept. */
export const PartPromise = z.object({
  kind: z.literal('promise'),
  id: PromiseId,
  project: ProjectId,
  part: PartId,
  date: CivilDate,
  by: PartyId,
  madeAt: Instant,
  remark: OptionalText,
})
export type PartPromise = Readonly<z.infer<typeof PartPromise>>

/** An open window: a span that the lead has published for an assembly (its shell), at a bay of its own if named. */
export const OpenWindow = z.object({
  kind: z.literal('openWindow'),
  id: OpenWindowId,
  project: ProjectId,
  assembly: AssemblyId,
  bay: z.nullable(BayId),
  from: Instant,
  to: Instant,
  openedAt: Instant,
  closedAt: z.nullable(Instant),
})
export type OpenWindow = Readonly<z.infer<typeof OpenWindow>>

/** A span of time for one assembly in one bay of `shop`. Belongs to the project and to the shop's book. */
export const Slot = z.object({
  kind: z.literal('slot'),
  id: SlotId,
  project: ProjectId,
  shop: ShopId,
  bay: BayId,
  assembly: AssemblyId,
  stage: z.nullable(StageId),
  party: PartyId,
  from: Instant,
  to: Instant,
  state: z.enum(['asked', 'agreed', 'released']),
  askedAt: Instant,
  agreedAt: z.nullable(Instant),
  agreedBy: z.nullable(PartyId),
  window: z.nullable(OpenWindowId),
  reason: z.nullable(Text),
})
export type Slot = Readonly<z.infer<typeof Slot>>

/** Words on any entity: a note, or a question and answer. Private to the party (`shop`) or shared. */
export const Note = z.object({
  kind: z.literal('note'),
  id: NoteId,
  project: ProjectId,
  on: EntityId,
  type: z.enum(['note', 'question', 'answer']),
  sharing: z.enum(['shop', 'shared']),
  /** Where it speaks of one party's business (a change order, a decision): that party. Others don't see it. */
  business: z.nullable(PartyId),
  text: Text,
  party: PartyId,
  person: PersonId,
  at: Instant,
  withdrawnAt: z.nullable(Instant),
})
export type Note = Readonly<z.infer<typeof Note>>

/** What the lead entered for a party by telephone, until that party confirms it. */
export const Told = z.object({
  kind: z.literal('told'),
  id: ToldId,
  project: ProjectId,
  entity: EntityId,
  party: PartyId,
  command: Line,
  person: PersonId,
  at: Instant,
  confirmedAt: z.nullable(Instant),
  confirmedBy: z.nullable(PersonId),
})
export type Told = Readonly<z.infer<typeof Told>>
