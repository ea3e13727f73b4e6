import type { EntityByKind, Kind } from './entity.ts'
import type { PartyId } from './ids.ts'

/**
 * Who a field is for. *open*: every party of the project. *business*: its party, the lead, and the owner where that party
 * bills the owner. *money*: the managers of its party and of whom it bills. *private*: its party alone.
 * *managers*: its party's managers alone, such as a price before it is sent. *personal*: seen like open, but a value that can be erased.
 */
export type Scope = 'open' | 'business' | 'money' | 'private' | 'managers' | 'personal'

/** From what everyone may know to what few may: an input is as secret as the most secret entity it makes. */
export const scopesByReach: readonly Scope[] = [
  'open',
  'personal',
  'business',
  'money',
  'private',
  'managers',
]

interface Rule<E> {
  /** Scope of every field not named in `fields`. Who may not see this scope doesn't see the entity. */
  readonly scope: (entity: E) => Scope
  /** Whose business, money or privacy it is; null: the project's own (its owner and its lead). */
  readonly whose: (entity: E) => PartyId | null
  /** Fields of a narrower scope; each is nullable, and null to those who may not see it. */
  readonly fields: { readonly [F in keyof E]?: Scope }
  /** Further parties who see it at its own scope. */
  readonly also?: (entity: E) => readonly PartyId[]
  /** A gate rule reaches it by id, so those who may not see it get a stub. */
  readonly stub?: true
}

const open: { scope: () => Scope; whose: () => null; fields: object } = {
  scope: () => 'open',
  whose: () => null,
  fields: {},
}

/** The scope of each field of each kind of entity: the one table that `see` and the journal both follow. */
export const fieldScopes: { readonly [K in Kind]: Rule<EntityByKind[K]> } = {
  project: { ...open, fields: { standingConsentEach: 'money', standingConsentTotal: 'money' } },
  party: open,
  participant: open,
  assembly: open,
  stage: open,
  link: open,
  check: open,
  signOff: open,
  hold: open,
  concession: open,
  ask: open,
  handover: { ...open, fields: { receivedByName: 'personal', signature: 'personal' } },
  changeOrder: {
    scope: (order) => (order.sentAt === null ? 'managers' : 'business'),
    whose: (order) => order.party,
    fields: { shown: 'money', shownHash: 'money' },
    stub: true,
  },
  changeLine: {
    scope: (line) => (line.sentAt === null ? 'managers' : 'money'),
    whose: (line) => line.party,
    fields: {},
  },
  estimateLine: { scope: () => 'money', whose: (line) => line.party, fields: {} },
  decision: {
    scope: () => 'business',
    whose: (decision) => decision.party,
    fields: {},
    also: (decision) => [decision.chooser],
    stub: true,
  },
  decisionOption: {
    scope: () => 'business',
    whose: (option) => option.party,
    fields: { net: 'money' },
    also: (option) => [option.chooser],
  },
  part: { ...open, whose: (part) => part.party, fields: { price: 'money' } },
  promise: open,
  openWindow: open,
  slot: open,
  note: {
    scope: (note) =>
      note.sharing === 'shop' ? 'private' : note.business === null ? 'open' : 'business',
    whose: (note) => (note.sharing === 'shop' ? note.party : note.business),
    fields: {},
  },
  told: open,
  reading: open,
  airReading: open,
  metalReading: open,
  step: open,
  coat: open,
  film: open,
  colour: open,
  tinter: open,
  inDate: open,
  // That a payment stands in a stage's way is everyone's to know; the sum isn't.
  milestone: { ...open, whose: (milestone) => milestone.party, fields: { net: 'money' } },
  shop: open,
  membership: open,
  bay: open,
}
