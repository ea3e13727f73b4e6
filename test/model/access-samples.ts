import { newStep } from '../../lib/build-order/step-add.ts'
import type { CommandName } from '../../lib/record/command-names.ts'
import type { Json } from '../../lib/record/condition.ts'
import { Minor } from '../../lib/record/scalars.ts'
import {
  aChangeLine,
  aChangeOrder,
  aCheck,
  aDecision,
  aHandover,
  aHold,
  aLink,
  anAssembly,
  anEngine,
  anEstimateLine,
  anId,
  aPart,
  aParty,
  aProject,
  aRecord,
  aShell,
  aStage,
  at,
  engineId,
  engineShop,
  lead,
  leadShop,
  owner,
  project,
  shellId,
  trimShop,
} from '../builders.ts'
import { aBay, aMembership, anOpenWindow, aShop, aShopBook, aSlot } from '../shop-builders.ts'
import type { mayPressWhere } from './access.ts'

export const engines = anId('shp', 'engines')
export const trim = anId('shp', 'trim')
export const glass = anId('pty', 'glass')
export const insurer = anId('pty', 'insurer')
const platers = anId('pty', 'platers')
export const hand = anId('psn', 'ownhand')

/** The stage, the hold… of the engine shop: `id('stg', 'own')` and its like. */
const own = <P extends Parameters<typeof anId>[0]>(prefix: P) => anId(prefix, 'own')

const stage = aStage({ id: own('stg'), party: engineShop, countersigns: [trimShop, engineShop] })
const ofLead = aStage({ id: anId('stg', 'lead'), party: lead })
const signedOff = aStage({ id: anId('stg', 'signed'), party: engineShop, state: 'signed off' })
const working = aStage({ id: anId('stg', 'working'), party: engineShop, state: 'in work' })

/** A project in which each thing is the engine shop’s own, unless its name says otherwise. */
export const record = aRecord(
  aProject(),
  aParty({ id: glass, name: 'Ferrier Glass', role: 'supplier' }),
  aParty({ id: insurer, name: 'Brack & Low', role: 'observer' }),
  aParty({ id: platers, name: 'Northgate Plating', bills: 'lead' }),
  {
    kind: 'participant',
    id: own('ptc'),
    project,
    party: owner,
    person: anId('psn', 'ines'),
    since: at(0),
    removedAt: null,
  },
  [
    aShell(),
    anEngine({ custodian: engineShop }),
    anAssembly({ id: own('asm'), custodian: engineShop }),
  ],
  [stage, ofLead, signedOff, working],
  aLink({ id: own('lnk'), from: stage.id, to: signedOff.id }),
  aCheck({ id: own('chk'), stage: stage.id }),
  newStep(own('stp'), project, {
    stage: stage.id,
    position: 1,
    text: 'Count the bolts',
    tools: [],
    caution: null,
  }),
  [
    aHold({ id: own('hld'), stage: stage.id, point: 'witness' }),
    aHold({ id: anId('hld', 'shop'), stage: stage.id, party: engineShop }),
    aHold({ id: anId('hld', 'person'), stage: working.id, party: engineShop, person: hand }),
    aHold({ id: anId('hld', 'lead'), stage: ofLead.id, party: lead }),
  ],
  {
    kind: 'concession',
    id: own('con'),
    project,
    stage: stage.id,
    rule: 'part',
    entity: own('prt'),
    reason: 'It is in the van.',
    file: null,
    needs: [engineShop, lead],
    parties: [engineShop],
    person: hand,
    at: at(0),
    withdrawnAt: null,
  },
  {
    kind: 'ask',
    id: own('ask'),
    project,
    stage: stage.id,
    rule: 'custody',
    entity: engineId,
    from: trimShop,
    to: engineShop,
    text: '',
    person: hand,
    at: at(0),
    closedAt: null,
  },
  {
    kind: 'told',
    id: own('tld'),
    project,
    entity: stage.id,
    party: engineShop,
    command: 'stage.start',
    person: anId('psn', 'mara'),
    at: at(0),
    confirmedAt: null,
    confirmedBy: null,
  },
  aHandover({ id: own('hnd') }),
  aHandover({
    id: anId('hnd', 'in'),
    from: lead,
    to: engineShop,
    state: 'released',
    releasedAt: at(0),
  }),
  [
    aChangeOrder({ id: own('cho') }),
    aChangeOrder({ id: anId('cho', 'lead'), party: lead }),
    aChangeOrder({ id: anId('cho', 'platers'), party: platers }),
    aChangeLine({ changeOrder: own('cho') }),
  ],
  anEstimateLine({ id: own('esl'), party: engineShop }),
  aDecision({ id: own('dcs'), party: engineShop }),
  aDecision({ id: anId('dcs', 'chosen'), party: engineShop, state: 'chosen' }),
  {
    kind: 'decisionOption',
    id: own('opt'),
    project,
    decision: own('dcs'),
    party: engineShop,
    chooser: owner,
    position: 1,
    text: 'Lap',
    net: Minor.parse(100),
  },
  aPart({ id: own('prt'), party: engineShop, supplier: glass, state: 'ordered' }),
  anOpenWindow({ id: own('win') }),
  aSlot({ id: own('slt'), shop: trim, bay: anId('bay', 'trim'), party: engineShop }),
  ['own', 'manager'].map((name) => ({
    kind: 'note' as const,
    id: anId('nte', name),
    project,
    on: stage.id,
    type: 'note' as const,
    sharing: 'shop' as const,
    business: null,
    text: 'Looked at.',
    party: engineShop,
    person: name === 'own' ? hand : anId('psn', 'gone'),
    at: at(0),
    withdrawnAt: null,
  })),
)

/** The engine shop’s book. */
export const book = aShopBook(
  engines,
  aShop({ id: engines }),
  aBay({ id: own('bay'), shop: engines }),
  aMembership({ id: own('mbr'), shop: engines }),
)
export const books = [
  book,
  aShopBook(leadShop, aShop(), aBay({ id: anId('bay', 'one') })),
  aShopBook(trim, aShop({ id: trim }), aBay({ id: anId('bay', 'trim'), shop: trim })),
]

export type Input = { readonly [field: string]: Json }
const onStage = { stage: stage.id }
const because = { reason: 'It was a mistake.' }
const onHold = { hold: own('hld') }
const onOrder = { changeOrder: own('cho') }
const onPart = { part: own('prt') }
const onHandover = { handover: own('hnd') }
const told = { told: engineShop }
const span = { from: at(200), to: at(210) }
const condition = { ...onStage, rule: 'custody', entity: engineId }
const claim = { assembly: shellId, bay: 'bay_one', shop: leadShop, ...span }
const done = { startedAt: at(1), endedAt: at(2), ...because }
const line = { text: 'Work', net: 100, taxRate: 2000 }
const receipt = { handover: 'hnd_in', outcome: 'accepted' }
const preparation = { assemblies: [engineId], to: lead }
const hash = '0'.repeat(64)

/** A press of each command on those things. */
export const inputs: { readonly [Name in CommandName]: Input } = {
  'project.create': { shop: engines, name: 'Corrie' },
  'project.describe': { year: 1961 },
  'party.add': { name: 'Quill Electrical', role: 'shop' },
  'party.describe': { party: engineShop, name: 'Bexwater' },
  'party.leave': { party: engineShop },
  'participant.add': { party: owner, person: 'psn_new' },
  'participant.remove': { participant: own('ptc') },
  'assembly.add': { name: 'Door', custodian: engineShop },
  'assembly.describe': { assembly: engineId, name: 'Block' },
  'assembly.fit': { assembly: own('asm'), host: engineId, ...because },
  'assembly.takeOff': { assembly: engineId, ...because },
  'stage.add': { name: 'Bore', party: engineShop },
  'stage.describe': { ...onStage, name: 'Bore', safety: true },
  'stage.remove': { ...onStage, ...because },
  'stage.split': { ...onStage, first: 'Bore', second: 'Hone' },
  'stage.merge': { ...onStage, other: working.id, name: 'Bore and hone' },
  'stage.move': { ...onStage, after: [ofLead.id], before: [] },
  'stage.give': { ...onStage, party: trimShop, ...because },
  'link.describe': { link: own('lnk'), leastLagHours: 2 },
  'step.add': { ...onStage, text: 'Count the bolts' },
  'step.describe': { step: own('stp'), text: 'Count the nuts' },
  'step.remove': { step: own('stp') },
  'step.tick': { step: own('stp'), done: true },
  'link.draw': { from: stage.id, to: working.id },
  'link.remove': { link: own('lnk'), ...because },
  'check.add': { ...onStage, type: 'tick', name: 'Clean' },
  'check.remove': { check: own('chk'), ...because },
  'hold.remove': { hold: anId('hld', 'shop'), ...because },
  'hold.set': { ...onStage, point: 'hold', name: 'Seen', party: lead },
  'buildOrder.import': {
    parties: [],
    assemblies: [],
    stages: [],
    links: [],
    checks: [],
    holds: [],
  },
  'stage.start': onStage,
  'stage.pause': onStage,
  'stage.resume': onStage,
  'stage.end': onStage,
  'stage.correctEnd': { ...onStage, endedAt: at(2), ...because },
  'stage.takeBack': { ...onStage, ...because },
  'stage.signOff': onStage,
  'stage.countersign': { ...onStage, for: trimShop },
  'stage.reopen': { ...onStage, ...because },
  'stage.confirm': onStage,
  'stage.reportDone': { ...onStage, ...done },
  'check.record': { check: own('chk') },
  'hold.release': onHold,
  'hold.invite': { ...onHold, visitAt: at(200) },
  'hold.waive': onHold,
  'hold.takeBack': { ...onHold, ...because },
  'condition.concede': { ...condition, ...because },
  'concession.withdraw': { concession: own('con'), ...because },
  'condition.ask': { ...condition, to: engineShop },
  'ask.close': { ask: own('ask') },
  'told.confirm': { told: own('tld') },
  'handover.prepare': preparation,
  'handover.release': onHandover,
  'handover.takeBack': { ...onHandover, ...because },
  'handover.receive': receipt,
  'estimate.add': { party: engineShop, lines: [{ ...line, type: 'fixed' }] },
  'estimate.withdraw': { estimateLine: own('esl') },
  'changeOrder.raise': {
    party: engineShop,
    title: 'Spindles',
    reason: 'found',
    bears: 'owner',
    lines: [line],
  },
  'changeOrder.revise': { ...onOrder, title: 'Spindles and jets' },
  'changeOrder.send': onOrder,
  'changeOrder.ask': { ...onOrder, text: 'Why?' },
  'changeOrder.answer': { ...onOrder, text: 'Worn.' },
  'changeOrder.approve': { ...onOrder, shownHash: hash },
  'changeOrder.decline': onOrder,
  'changeOrder.withdraw': onOrder,
  'decision.ask': {
    question: 'Belts?',
    chooser: owner,
    options: [{ text: 'Lap' }, { text: 'Three-point' }],
    stages: [stage.id],
  },
  'decision.choose': { decision: own('dcs'), option: own('opt') },
  'decision.withdraw': { decision: own('dcs'), ...because },
  'part.want': { party: engineShop, name: 'Liners', stages: [] },
  'part.order': onPart,
  'part.promise': { ...onPart, date: '2026-04-01' },
  'part.arrive': onPart,
  'part.inspect': { ...onPart, outcome: 'passed' },
  'part.withdraw': { ...onPart, ...because },
  'window.open': { assembly: shellId, ...span },
  'window.close': { window: own('win') },
  'slot.claim': claim,
  'slot.agree': { slot: own('slt') },
  'slot.release': { slot: own('slt'), ...because },
  'note.write': { on: stage.id, text: 'Looked at.', sharing: 'shop' },
  'note.withdraw': { note: own('nte'), ...because },
  'shop.create': { name: 'New', currency: 'GBP', timeZone: 'Europe/London', taxRegistered: false },
  'shop.describe': { name: 'Bexwater' },
  'bay.add': { name: 'Bench 9', type: 'bench' },
  'bay.describe': { bay: own('bay'), type: 'lift' },
  'bay.retire': { bay: own('bay') },
  'membership.add': { person: 'psn_new', role: 'hand' },
  'membership.change': { membership: own('mbr'), role: 'manager' },
  'membership.remove': { membership: own('mbr') },
}

export const inputsWhere: { readonly [Press in keyof typeof mayPressWhere]: Input } = {
  'stage.start, told by phone': { ...onStage, ...told },
  'stage.pause, told by phone': { ...onStage, ...told },
  'stage.resume, told by phone': { ...onStage, ...told },
  'stage.end, told by phone': { ...onStage, ...told },
  'stage.reportDone, told by phone': { ...onStage, ...done, ...told },
  'check.record, told by phone': { check: own('chk'), ...told },
  'handover.prepare, told by phone': { ...preparation, ...told },
  'handover.release, told by phone': { ...onHandover, ...told },
  'handover.receive, told by phone': { ...receipt, ...told },
  'part.order, told by phone': { ...onPart, ...told },
  'part.promise, told by phone': { ...onPart, date: '2026-04-01', ...told },
  'part.arrive, told by phone': { ...onPart, ...told },
  'slot.claim, told by phone': { ...claim, ...told },
  'part.order, with its price': { ...onPart, price: 100 },
  'project.describe, what is allowed in advance': {
    standingConsentEach: 100,
    standingConsentTotal: 100,
  },
  'party.describe, which shop it is': { party: engineShop, shop: engines },
  'stage.describe, given to another party': { ...onStage, party: trimShop },
  'stage.describe, no longer safety work': { ...onStage, safety: false },
  'stage.takeBack, of a sign-off': { stage: signedOff.id, ...because },
  'stage.countersign, of their own stage': { ...onStage, for: engineShop },
  'hold.release, on their own stage': { hold: 'hld_shop' },
  'hold.release, by a person named': { hold: 'hld_person' },
  'hold.release, on the lead’s own stage': { hold: 'hld_lead' },
  'condition.concede, on the lead’s own stage': { ...condition, ...because, stage: ofLead.id },
  'changeOrder.approve, of the lead’s own': { changeOrder: 'cho_lead', shownHash: hash },
  'changeOrder.approve, of who bills the lead': { changeOrder: 'cho_platers', shownHash: hash },
  'changeOrder.decline, of who bills the lead': { changeOrder: 'cho_platers' },
  'decision.withdraw, once it is chosen': { decision: 'dcs_chosen', ...because },
  'note.withdraw, of another of the same shop': { note: 'nte_manager', ...because },
}
