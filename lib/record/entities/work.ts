import * as z from 'zod/mini'
import {
  AskId,
  AssemblyId,
  ChangeOrderId,
  CheckId,
  ConcessionId,
  DecisionId,
  EntityId,
  HoldId,
  LinkId,
  PartyId,
  PersonId,
  ProjectId,
  SignOffId,
  StageId,
} from '../ids.ts'
import { Hours, Instant, Line, OptionalText, Sha256, Text } from '../scalars.ts'
import { CoatKind } from './coating.ts'
import { DatedThing } from './standing.ts'

/** What can hurt somebody or spoil the work at a stage. */
export const Hazard = z.enum([
  'isocyanate',
  'dust',
  'solvent',
  'hot work',
  'lifting',
  'springs',
  'fuel',
  'battery',
  'brakes',
  'coolant',
  'rotating parts',
  'high pressure',
  'chemicals',
  'asbestos',
  'lead',
  'cutting',
  'crushing',
  'structure',
  'road',
])
export type Hazard = z.infer<typeof Hazard>

/** The stored states of a stage (DESIGN §4); *ready*, *waiting* and *held* are computed. */
export const StageState = z.enum([
  'planned',
  'in work',
  'paused',
  'ended',
  'signed off',
  'in doubt',
  'reopened',
])
export type StageState = z.infer<typeof StageState>

/**
 * A piece of work owned by one party, on named assemblies. `hours…` are working hours.
 * `fits` are fitted to `host` when the work ends, `removes` come off; `needsFitted` and `needsOff` must be so at its start.
 * `handoverTo`: the stage ends with a handover of its assemblies to that party.
 */
export const Stage = z.object({
  kind: z.literal('stage'),
  id: StageId,
  project: ProjectId,
  number: z.int().check(z.minimum(1)),
  name: Line,
  group: z.nullable(Line),
  party: PartyId,
  assemblies: z.array(AssemblyId),
  host: z.nullable(AssemblyId),
  fits: z.array(AssemblyId),
  removes: z.array(AssemblyId),
  needsFitted: z.array(AssemblyId),
  needsOff: z.array(AssemblyId),
  needsBay: z.boolean(),
  /** While it is in work no other stage may use its assemblies. */
  exclusive: z.boolean(),
  hoursLeast: z.nullable(Hours),
  hoursLikely: z.nullable(Hours),
  hoursMost: z.nullable(Hours),
  safety: z.boolean(),
  caution: z.nullable(Text),
  /** What its precautions are against; they are ticked before it starts, anew after a reopening. */
  hazards: z.array(Hazard),
  precautionsAt: z.nullable(Instant),
  precautionsBy: z.nullable(PersonId),
  /** Air and surface are read before it starts, no longer ago than this, in minutes; null where no such reading is asked. */
  airAgeMost: z.nullable(z.number().check(z.positive())),
  /** The least margin of the surface over the dew point, and the limits of the sheet: °C, % and °C. */
  dewMarginLeast: z.nullable(z.number()),
  humidityMost: z.nullable(z.number()),
  surfaceLeast: z.nullable(z.number()),
  surfaceMost: z.nullable(z.number()),
  /** What must be in date while it is worked on. */
  inDate: z.array(DatedThing),
  /** What it lays on each of its assemblies, and whether it keys what lies there. */
  lays: z.nullable(CoatKind),
  keys: z.boolean(),
  /** Flatting or polishing: how much film it is to take off, in µm; null where it takes none. */
  flats: z.nullable(z.number().check(z.positive())),
  /** How many hands it takes, the trade that does it, and which stage of a library it was made from. */
  people: z.int().check(z.minimum(1)),
  trade: z.nullable(Line),
  madeFrom: z.nullable(Line),
  changeOrder: z.nullable(ChangeOrderId),
  decision: z.nullable(DecisionId),
  handoverTo: z.nullable(PartyId),
  countersigns: z.array(PartyId),
  state: StageState,
  startedAt: z.nullable(Instant),
  startedBy: z.nullable(PersonId),
  /** Everyone who began it or went on with it, and who ended it before it was reopened. None where told by phone. */
  workedBy: z.array(PersonId),
  pausedAt: z.nullable(Instant),
  endedAt: z.nullable(Instant),
  endedBy: z.nullable(PersonId),
  signedOffAt: z.nullable(Instant),
  /** Done outside the gate and reported afterwards; its unmet conditions then. */
  reported: z.nullable(Text),
  /** Why it stands reopened or in doubt. */
  doubt: z.nullable(Text),
  removedAt: z.nullable(Instant),
})
export type Stage = Readonly<z.infer<typeof Stage>>

/** `to` waits for `from`. Lags are clock hours from the recorded end of `from`'s work: cure, recoat window. */
export const Link = z.object({
  kind: z.literal('link'),
  id: LinkId,
  project: ProjectId,
  from: StageId,
  to: StageId,
  leastLagHours: Hours,
  greatestLagHours: z.nullable(Hours),
  why: z.nullable(Line),
  /** Its least lag can't be conceded. */
  safety: z.boolean(),
  /** The metal temperature in °C for which its lags are given; a colder log lengthens the least lag. Null where it isn't a cure. */
  curesAt: z.nullable(z.number()),
  removedAt: z.nullable(Instant),
})
export type Link = Readonly<z.infer<typeof Link>>

/** What a check wants: a figure, a picture, a tick, a paper or a name. */
export const CheckType = z.enum(['reading', 'photo', 'tick', 'document', 'signature'])
export type CheckType = z.infer<typeof CheckType>

/** Evidence that a stage needs. A reading out of limits is kept; a corrected one keeps the first. Limits are inclusive. */
export const Check = z.object({
  kind: z.literal('check'),
  id: CheckId,
  project: ProjectId,
  stage: StageId,
  position: z.int(),
  type: CheckType,
  name: Line,
  unit: z.nullable(Line),
  least: z.nullable(z.number()),
  greatest: z.nullable(z.number()),
  /** Names of the points at which it is read; none where it is one figure. */
  points: z.array(Line),
  /** What the limits are: typical of the trade, the maker's, or agreed; null where there are none. */
  basis: z.nullable(z.enum(['typical', 'maker', 'agreed'])),
  /** Where the limits are from: a sheet, a book, a standard. */
  limitSource: z.nullable(Line),
  /** It holds its stage until limits with their source are entered. */
  limitWanted: z.boolean(),
  /** The instrument is named with each reading, and its calibration must be in date. */
  needsInstrument: z.boolean(),
  state: z.enum(['missing', 'passed', 'out of limits']),
  value: z.nullable(z.number()),
  firstValue: z.nullable(z.number()),
  text: z.nullable(OptionalText),
  files: z.array(Sha256),
  by: z.nullable(PersonId),
  at: z.nullable(Instant),
  removedAt: z.nullable(Instant),
})
export type Check = Readonly<z.infer<typeof Check>>

/** One signature on a stage. A withdrawn one stays. */
export const SignOff = z.object({
  kind: z.literal('signOff'),
  id: SignOffId,
  project: ProjectId,
  stage: StageId,
  party: PartyId,
  type: z.enum(['sign-off', 'countersign', 'confirm']),
  person: PersonId,
  at: Instant,
  withdrawnAt: z.nullable(Instant),
  reason: z.nullable(Text),
})
export type SignOff = Readonly<z.infer<typeof SignOff>>

/** A hold or witness point after a stage: what follows may not start until `party` (or `person` of it) releases it. */
export const Hold = z.object({
  kind: z.literal('hold'),
  id: HoldId,
  project: ProjectId,
  stage: StageId,
  point: z.enum(['hold', 'witness']),
  name: Line,
  party: PartyId,
  person: z.nullable(PersonId),
  state: z.enum(['set', 'invited', 'released', 'waived']),
  setAt: Instant,
  invitedAt: z.nullable(Instant),
  visitAt: z.nullable(Instant),
  /** Working days between an invitation and the visit; a witness who is silent past them holds nothing up. */
  noticeDays: z.int().check(z.minimum(0), z.maximum(60)),
  clearedAt: z.nullable(Instant),
  clearedBy: z.nullable(PersonId),
  remark: z.nullable(OptionalText),
  removedAt: z.nullable(Instant),
})
export type Hold = Readonly<z.infer<typeof Hold>>

/** An unmet condition accepted with a reason. It counts once every party in `needs` is in `parties`. */
export const Concession = z.object({
  kind: z.literal('concession'),
  id: ConcessionId,
  project: ProjectId,
  stage: StageId,
  rule: Line,
  entity: EntityId,
  reason: Text,
  /** The data sheet that it stands on, where the rule asks for one. */
  file: z.nullable(Sha256),
  needs: z.array(PartyId),
  parties: z.array(PartyId),
  person: PersonId,
  at: Instant,
  withdrawnAt: z.nullable(Instant),
})
export type Concession = Readonly<z.infer<typeof Concession>>

/** A condition put before the party that can clear it. It is done when the condition is met; that is computed. */
export const Ask = z.object({
  kind: z.literal('ask'),
  id: AskId,
  project: ProjectId,
  stage: StageId,
  rule: Line,
  entity: EntityId,
  from: PartyId,
  to: PartyId,
  text: OptionalText,
  person: PersonId,
  at: Instant,
  closedAt: z.nullable(Instant),
})
export type Ask = Readonly<z.infer<typeof Ask>>
