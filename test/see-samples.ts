import type { View } from '../lib/record/actor.ts'
import type { Entity } from '../lib/record/entity.ts'
import { CivilDate, Minor } from '../lib/record/scalars.ts'
import {
  aChangeLine,
  aChangeOrder,
  aCheck,
  aDecision,
  aHandover,
  aHold,
  aLink,
  anAssembly,
  anEstimateLine,
  anId,
  aPart,
  aParty,
  aProject,
  aStage,
  at,
  engineShop,
  lead,
  leadShop,
  owner,
  project,
  shellId,
  trimShop,
} from './builders.ts'
import { aBay, aMembership, anOpenWindow, aShop, aSlot } from './shop-builders.ts'

/** A shop behind the lead, which it bills; a supplier; an insurer who reads. */
export const castings = anId('pty', 'castings')
export const glass = anId('pty', 'glass')
export const insurer = anId('pty', 'insurer')

export const furtherParties = [
  aParty({ id: castings, name: 'Sallow Street Castings', bills: 'lead' }),
  aParty({ id: glass, name: 'Ferrier Glass', role: 'supplier', bills: 'lead' }),
  aParty({ id: insurer, name: 'Marram Mutual', role: 'observer' }),
]

/** The columns of the table. Engines bill the owner, castings bill the lead, trim is a third party to both. */
export const views = {
  owner: { party: owner, role: 'owner' },
  lead: { party: lead, role: 'manager' },
  'lead hand': { party: lead, role: 'hand' },
  engines: { party: engineShop, role: 'manager' },
  'engines hand': { party: engineShop, role: 'hand' },
  castings: { party: castings, role: 'manager' },
  trim: { party: trimShop, role: 'manager' },
  glass: { party: glass, role: 'supplier' },
  insurer: { party: insurer, role: 'observer' },
  guest: { party: trimShop, role: 'guest' },
} as const satisfies { readonly [name: string]: View }
export type ViewName = keyof typeof views

const person = anId('psn', 'jory')
const aboutStage = anId('stg', 'fit')
const windscreen = anId('prt', 'windscreen')
const liners = anId('prt', 'liners')
const carburettors = anId('cho', 'carburettors')
const linerOrder = anId('cho', 'liners')
const draftOrder = anId('cho', 'draft')
const leather = anId('dcs', 'leather')
const linerChoice = anId('dcs', 'liners')
const sum = Minor.parse(12_345)

const aNote = (
  id: string,
  over: Partial<Extract<Entity, { kind: 'note' }>>,
): Extract<Entity, { kind: 'note' }> => ({
  kind: 'note',
  id: anId('nte', id),
  project,
  on: shellId,
  type: 'note',
  sharing: 'shared',
  business: null,
  text: 'A word',
  party: engineShop,
  person,
  at: at(0),
  withdrawnAt: null,
  ...over,
})

/** One of each kind, and of those whose audience depends on what they say, one of each sort. */
export const samples: { readonly [name: string]: Entity } = {
  project: aProject({ standingConsentEach: sum, standingConsentTotal: sum }),
  party: aParty(),
  participant: {
    kind: 'participant',
    id: anId('ptc', 'ines'),
    project,
    party: owner,
    person,
    since: at(0),
    removedAt: null,
  },
  assembly: anAssembly(),
  stage: aStage({ id: aboutStage, changeOrder: carburettors }),
  link: aLink({ from: aboutStage, to: anId('stg', 'run') }),
  check: aCheck({ stage: aboutStage }),
  signOff: {
    kind: 'signOff',
    id: anId('sgn', 'one'),
    project,
    stage: aboutStage,
    party: engineShop,
    type: 'sign-off',
    person,
    at: at(0),
    withdrawnAt: null,
    reason: null,
  },
  hold: aHold({ stage: aboutStage }),
  concession: {
    kind: 'concession',
    id: anId('con', 'one'),
    project,
    stage: aboutStage,
    rule: 'part',
    entity: windscreen,
    reason: 'Not needed yet',
    needs: [lead],
    parties: [lead],
    person,
    at: at(0),
    withdrawnAt: null,
  },
  ask: {
    kind: 'ask',
    id: anId('ask', 'one'),
    project,
    stage: aboutStage,
    rule: 'part',
    entity: windscreen,
    from: lead,
    to: engineShop,
    text: '',
    person,
    at: at(0),
    closedAt: null,
  },
  'handover of engines to lead': aHandover({ receivedByName: 'A. Carter', signature: 'M0 0L9 9' }),
  'handover of lead to trim': aHandover({ id: anId('hnd', 'totrim'), from: lead, to: trimShop }),
  'handover of lead to glass': aHandover({ id: anId('hnd', 'toglass'), from: lead, to: glass }),
  'change order of engines': aChangeOrder({
    id: carburettors,
    shown: '{}',
    shownHash: 'ab'.repeat(32),
  }),
  'change order of castings': aChangeOrder({
    id: linerOrder,
    number: 2,
    party: castings,
    shown: '{}',
    shownHash: 'ab'.repeat(32),
  }),
  'change line of engines': aChangeLine({ changeOrder: carburettors }),
  'change line of castings': aChangeLine({ changeOrder: linerOrder, party: castings }),
  'draft of engines': aChangeOrder({ id: draftOrder, number: 3, state: 'draft', sentAt: null }),
  'line on the draft of engines': aChangeLine({ changeOrder: draftOrder, sentAt: null }),
  'estimate line of lead': anEstimateLine(),
  'estimate line of engines': anEstimateLine({ party: engineShop }),
  'estimate line of castings': anEstimateLine({ party: castings }),
  'decision of lead for owner': aDecision({ id: leather }),
  'decision of castings for engines': aDecision({
    id: linerChoice,
    party: castings,
    chooser: engineShop,
  }),
  'option of lead for owner': {
    kind: 'decisionOption',
    id: anId('opt', 'oxblood'),
    project,
    decision: leather,
    party: lead,
    chooser: owner,
    position: 1,
    text: 'Oxblood',
    net: sum,
  },
  'option of castings for engines': {
    kind: 'decisionOption',
    id: anId('opt', 'dry'),
    project,
    decision: linerChoice,
    party: castings,
    chooser: engineShop,
    position: 1,
    text: 'Dry liners',
    net: sum,
  },
  'part of lead by glass': aPart({ id: windscreen, supplier: glass, price: sum }),
  'part of engines': aPart({ id: liners, party: engineShop, price: sum }),
  'promise by glass': {
    kind: 'promise',
    id: anId('prm', 'first'),
    project,
    part: windscreen,
    date: CivilDate.parse('2026-05-01'),
    by: glass,
    madeAt: at(0),
    remark: '',
  },
  'promise of liners': {
    kind: 'promise',
    id: anId('prm', 'liners'),
    project,
    part: liners,
    date: CivilDate.parse('2026-05-01'),
    by: castings,
    madeAt: at(0),
    remark: '',
  },
  openWindow: anOpenWindow(),
  slot: aSlot(),
  'note, shared': aNote('shared', {}),
  'note, private to engines': aNote('own', { sharing: 'shop' }),
  'note, business of engines': aNote('business', { business: engineShop }),
  'note, business of castings': aNote('behind', { business: castings, party: castings }),
  told: {
    kind: 'told',
    id: anId('tld', 'one'),
    project,
    entity: aboutStage,
    party: engineShop,
    command: 'stage.start',
    person,
    at: at(0),
    confirmedAt: null,
    confirmedBy: null,
  },
  shop: aShop(),
  membership: aMembership({ shop: leadShop, person }),
  bay: aBay(),
}
