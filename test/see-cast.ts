import type { Participant } from '../lib/record/entities/people.ts'
import type { Entity } from '../lib/record/entity.ts'
import type { PartyId, PersonId, ShopId } from '../lib/record/ids.ts'
import {
  anEngine,
  anId,
  aShell,
  aStage,
  at,
  leadShop,
  owner,
  project,
  theParties,
} from './builders.ts'
import { castings, furtherParties, glass, insurer, samples, type ViewName } from './see-samples.ts'
import { aBay, aMembership, aShop } from './shop-builders.ts'

/** One person for each column of the table (a guest has no account). */
export const personOf = {
  owner: anId('psn', 'ines'),
  lead: anId('psn', 'ruth'),
  'lead hand': anId('psn', 'tom'),
  engines: anId('psn', 'bexmanager'),
  'engines hand': anId('psn', 'bexhand'),
  castings: anId('psn', 'sallow'),
  trim: anId('psn', 'thistle'),
  glass: anId('psn', 'ferrier'),
  insurer: anId('psn', 'marram'),
} as const satisfies { readonly [V in Exclude<ViewName, 'guest'>]: PersonId }

const engines = anId('shp', 'engines')
const trim = anId('shp', 'trim')

const member = (shop: ShopId, person: PersonId, role: 'manager' | 'hand') =>
  aMembership({ id: anId('mbr', person.slice(4)), shop, person, role })
const takesPart = (party: PartyId, person: PersonId): Participant => ({
  kind: 'participant',
  id: anId('ptc', `of${person.slice(4)}`),
  project,
  party,
  person,
  since: at(0),
  removedAt: null,
})

/** Parties, shops and people around the samples, and what the samples name. */
export const cast: readonly Entity[] = [
  ...theParties(),
  ...furtherParties,
  aShop({ id: engines, name: 'Bexwater Engines' }),
  aShop({ id: trim, name: 'Thistle & Welt' }),
  aBay({ id: anId('bay', 'one') }),
  member(leadShop, personOf.lead, 'manager'),
  member(leadShop, personOf['lead hand'], 'hand'),
  member(engines, personOf.engines, 'manager'),
  member(engines, personOf['engines hand'], 'hand'),
  member(trim, personOf.trim, 'manager'),
  takesPart(owner, personOf.owner),
  takesPart(castings, personOf.castings),
  takesPart(glass, personOf.glass),
  takesPart(insurer, personOf.insurer),
  aShell(),
  anEngine(),
  aStage({ id: anId('stg', 'run'), name: 'Run it in' }),
]

/** The samples that belong to a project's record. */
export const projectSamples = Object.entries(samples).filter(
  ([, { kind }]) => kind !== 'shop' && kind !== 'membership' && kind !== 'bay',
)
