import { missingCheck } from '../lib/build-order/check-add.ts'
import { plannedStage } from '../lib/build-order/stage-fields.ts'
import type { Actor, Role } from '../lib/record/actor.ts'
import type { Context } from '../lib/record/command.ts'
import type {
  ChangeLine,
  ChangeOrder,
  Decision,
  EstimateLine,
} from '../lib/record/entities/money.ts'
import type { Party, Project } from '../lib/record/entities/people.ts'
import type { Assembly, Handover, Part } from '../lib/record/entities/things.ts'
import type { Check, Hold, Link, Stage } from '../lib/record/entities/work.ts'
import type { Entity } from '../lib/record/entity.ts'
import {
  CommandKey,
  type IdByPrefix,
  type IdPrefix,
  idSchemas,
  idsFrom,
  type PartyId,
} from '../lib/record/ids.ts'
import {
  emptyProjectRecord,
  type ProjectRecord,
  projectAfter,
} from '../lib/record/project-record.ts'
import { Instant, Minor, TaxRate } from '../lib/record/scalars.ts'

const byPrefix: { readonly [P in IdPrefix]: { parse(text: unknown): IdByPrefix[P] } } = idSchemas
/** The id with that prefix and name: `anId('stg', '7')`. */
export const anId = <P extends IdPrefix>(prefix: P, name: string): IdByPrefix[P] =>
  byPrefix[prefix].parse(`${prefix}_${name}`)

let made = 0
/** An id of that prefix that no other test has. */
export const fresh = <P extends IdPrefix>(prefix: P): IdByPrefix[P] => anId(prefix, `made${++made}`)

/** An instant by hours after the start of the tests' calendar, Monday 2 March 2026, 08:00 UTC. */
export const at = (hours: number): Instant =>
  Instant.parse(new Date(Date.UTC(2026, 2, 2, 8) + hours * 3_600_000).toISOString())

export const project = anId('prj', 'averley')
export const lead = anId('pty', 'lead')
export const engineShop = anId('pty', 'engines')
export const trimShop = anId('pty', 'trim')
export const owner = anId('pty', 'owner')
export const leadShop = anId('shp', 'lead')
export const shellId = anId('asm', 'shell')
export const engineId = anId('asm', 'engine')

export const aProject = (over: Partial<Project> = {}): Project => ({
  kind: 'project',
  id: project,
  name: 'Averley Three-Litre',
  year: 1961,
  description: '',
  currency: 'GBP',
  timeZone: 'Europe/London',
  standingConsentEach: null,
  standingConsentTotal: null,
  demo: false,
  createdAt: at(0),
  ...over,
})
export const aParty = (over: Partial<Party> = {}): Party => ({
  kind: 'party',
  id: fresh('pty'),
  project,
  name: 'A shop',
  role: 'shop',
  lead: false,
  shop: null,
  bills: 'owner',
  leftAt: null,
  ...over,
})
/** Lead, engine shop, trimmer and owner. */
export const theParties = (): Party[] => [
  aParty({ id: lead, name: 'Tarn Lane Coachworks', lead: true, shop: leadShop }),
  aParty({ id: engineShop, name: 'Bexwater Engines', shop: anId('shp', 'engines') }),
  aParty({ id: trimShop, name: 'Thistle & Welt', shop: anId('shp', 'trim') }),
  aParty({ id: owner, name: 'Ines Halloran', role: 'owner' }),
]
export const anAssembly = (over: Partial<Assembly> = {}): Assembly => ({
  kind: 'assembly',
  id: fresh('asm'),
  project,
  name: 'Something',
  pieces: 1,
  custodian: lead,
  since: at(0),
  host: null,
  holdsFuel: false,
  ...over,
})
export const aShell = (over: Partial<Assembly> = {}) =>
  anAssembly({ id: shellId, name: 'Shell', ...over })
export const anEngine = (over: Partial<Assembly> = {}) =>
  anAssembly({ id: engineId, name: 'Engine', ...over })
export const aStage = (over: Partial<Stage> = {}): Stage => ({
  ...plannedStage(fresh('stg'), project, ++made, 'A stage', lead),
  assemblies: [engineId],
  ...over,
})
export const aLink = (over: Partial<Link> & Pick<Link, 'from' | 'to'>): Link => ({
  kind: 'link',
  id: fresh('lnk'),
  project,
  leastLagHours: 0,
  greatestLagHours: null,
  why: null,
  safety: false,
  curesAt: null,
  removedAt: null,
  ...over,
})
export const aCheck = (over: Partial<Check> & Pick<Check, 'stage'>): Check => ({
  ...missingCheck(fresh('chk'), project, {
    stage: over.stage,
    position: 1,
    type: 'tick',
    name: 'A check',
    unit: null,
    least: null,
    greatest: null,
  }),
  ...over,
})
export const aHold = (over: Partial<Hold> & Pick<Hold, 'stage'>): Hold => ({
  kind: 'hold',
  id: fresh('hld'),
  project,
  point: 'hold',
  name: 'Seen before it is closed',
  party: owner,
  person: null,
  state: 'set',
  setAt: at(0),
  invitedAt: null,
  visitAt: null,
  noticeDays: 2,
  clearedAt: null,
  clearedBy: null,
  remark: null,
  removedAt: null,
  ...over,
})
export const aHandover = (over: Partial<Handover> = {}): Handover => ({
  kind: 'handover',
  id: fresh('hnd'),
  project,
  assemblies: [engineId],
  from: engineShop,
  to: lead,
  stage: null,
  state: 'prepared',
  condition: '',
  care: '',
  pieces: null,
  files: [],
  preparedAt: at(0),
  releasedAt: null,
  releasedBy: null,
  receivedAt: null,
  receivedBy: null,
  receivedByName: null,
  signature: null,
  receivedPieces: null,
  outcome: null,
  remarks: null,
  receivedFiles: [],
  ...over,
})
export const aChangeOrder = (over: Partial<ChangeOrder> = {}): ChangeOrder => ({
  kind: 'changeOrder',
  id: fresh('cho'),
  project,
  number: 1,
  title: 'Extra work',
  text: '',
  reason: 'found',
  party: engineShop,
  bears: 'owner',
  state: 'sent',
  days: null,
  files: [],
  raisedAt: at(0),
  raisedBy: anId('psn', 'jory'),
  sentAt: at(1),
  answeredAt: null,
  answeredBy: null,
  proof: null,
  shown: null,
  shownHash: null,
  answer: null,
  ...over,
})
export const aChangeLine = (
  over: Partial<ChangeLine> & Pick<ChangeLine, 'changeOrder'>,
): ChangeLine => ({
  kind: 'changeLine',
  id: fresh('chl'),
  project,
  party: engineShop,
  position: 1,
  text: 'Work',
  quantity: null,
  unit: null,
  unitPrice: null,
  net: Minor.parse(10_000),
  taxRate: TaxRate.parse(2000),
  sentAt: at(1),
  removedAt: null,
  ...over,
})
export const anEstimateLine = (over: Partial<EstimateLine> = {}): EstimateLine => ({
  kind: 'estimateLine',
  id: fresh('esl'),
  project,
  party: lead,
  position: 1,
  text: 'Work',
  type: 'fixed',
  net: Minor.parse(100_000),
  taxRate: TaxRate.parse(2000),
  withdrawnAt: null,
  ...over,
})
export const aDecision = (over: Partial<Decision> = {}): Decision => ({
  kind: 'decision',
  id: fresh('dcs'),
  project,
  question: 'Which?',
  text: '',
  party: lead,
  chooser: owner,
  decideBy: null,
  state: 'asked',
  askedAt: at(0),
  chosen: null,
  chosenAt: null,
  chosenBy: null,
  reason: null,
  ...over,
})
export const aPart = (over: Partial<Part> = {}): Part => ({
  kind: 'part',
  id: fresh('prt'),
  project,
  name: 'A part',
  number: null,
  party: lead,
  supplier: null,
  stages: [],
  state: 'wanted',
  price: null,
  wantedAt: at(0),
  orderedAt: null,
  arrivedAt: null,
  inspectedAt: null,
  inspectedBy: null,
  remark: null,
  withdrawnAt: null,
  ...over,
})
/** A record of those entities, with the project and the four parties unless it has its own. */
export function aRecord(...entities: readonly (Entity | readonly Entity[])[]): ProjectRecord {
  const own = entities.flat()
  const base: Entity[] = [aProject(), ...theParties()]
  return projectAfter(emptyProjectRecord(project), { version: 1, entities: [...base, ...own] })
}
/** Somebody who acts for that party; a manager who has just proved who they are, unless said otherwise. */
export const anActor = (party: PartyId, over: Partial<Actor> = {}): Actor => {
  const role: Role = party === owner ? 'owner' : 'manager'
  return {
    person: anId('psn', `of${party.slice(4)}`),
    role,
    party,
    shop: null,
    proof: 'password',
    provedAt: at(100),
    ...over,
  }
}

let keys = 0
/** A new idempotency key. */
export const aKey = (): CommandKey =>
  CommandKey.parse(`01997000-0000-7000-8000-${(++keys).toString(16).padStart(12, '0')}`)

/** A context in which it is now `at(100)`. */
export const aContext = (actor: Actor, over: Partial<Context> = {}): Context => ({
  actor,
  now: at(100),
  happenedAt: at(100),
  newId: idsFrom(aKey()),
  shops: new Map(),
  files: new Set(),
  ...over,
})
