import * as z from 'zod/mini'
import { Coat, Colour, Film, Tinter } from './entities/coating.ts'
import { AirReading, MetalReading, Reading, Step } from './entities/evidence.ts'
import {
  ChangeLine,
  ChangeOrder,
  Decision,
  DecisionOption,
  EstimateLine,
} from './entities/money.ts'
import { Bay, Membership, Participant, Party, Project, Shop } from './entities/people.ts'
import { InDate, Milestone } from './entities/standing.ts'
import {
  Assembly,
  Handover,
  Note,
  OpenWindow,
  Part,
  PartPromise,
  Slot,
  Told,
} from './entities/things.ts'
import { Ask, Check, Concession, Hold, Link, SignOff, Stage } from './entities/work.ts'

/** Schema of every kind of entity. A new kind is one line here, one in a record's tables, one in `fieldScopes`. */
export const entitySchemas = {
  project: Project,
  party: Party,
  participant: Participant,
  assembly: Assembly,
  stage: Stage,
  link: Link,
  check: Check,
  signOff: SignOff,
  hold: Hold,
  concession: Concession,
  ask: Ask,
  handover: Handover,
  changeOrder: ChangeOrder,
  changeLine: ChangeLine,
  estimateLine: EstimateLine,
  decision: Decision,
  decisionOption: DecisionOption,
  part: Part,
  promise: PartPromise,
  openWindow: OpenWindow,
  slot: Slot,
  note: Note,
  told: Told,
  reading: Reading,
  airReading: AirReading,
  metalReading: MetalReading,
  step: Step,
  coat: Coat,
  film: Film,
  colour: Colour,
  tinter: Tinter,
  inDate: InDate,
  milestone: Milestone,
  shop: Shop,
  membership: Membership,
  bay: Bay,
}

/** Name of a kind of entity. */
export type Kind = keyof typeof entitySchemas
export type EntityByKind = { readonly [K in Kind]: Readonly<z.infer<(typeof entitySchemas)[K]>> }
/** Any entity of any record. */
export type Entity = EntityByKind[Kind]

/** Reads an entity of any kind. */
export const Entity = z.discriminatedUnion('kind', [
  Project,
  Party,
  Participant,
  Assembly,
  Stage,
  Link,
  Check,
  SignOff,
  Hold,
  Concession,
  Ask,
  Handover,
  ChangeOrder,
  ChangeLine,
  EstimateLine,
  Decision,
  DecisionOption,
  Part,
  PartPromise,
  OpenWindow,
  Slot,
  Note,
  Told,
  Reading,
  AirReading,
  MetalReading,
  Step,
  Coat,
  Film,
  Colour,
  Tinter,
  InDate,
  Milestone,
  Shop,
  Membership,
  Bay,
])

/** Tells whether an entity is of that kind. */
export const isKind =
  <K extends Kind>(kind: K) =>
  (entity: Entity): entity is EntityByKind[K] =>
    entity.kind === kind

/** What `see` leaves of an entity that exists but may not be seen, where a gate rule must know that it exists. */
export interface Stub {
  readonly kind: Kind
  readonly id: string
  readonly hidden: true
}
