import type { View } from '../record/actor.ts'
import type { Entity, EntityByKind, Kind, Stub } from '../record/entity.ts'
import { isKind } from '../record/entity.ts'
import { fieldScopes, type Scope, scopesByReach } from '../record/field-scopes.ts'
import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { outsiderSees } from './outsiders.ts'
import { type Viewer, viewerOf } from './viewer.ts'

/**
 * The entity as that view may see it; a stub where a gate rule must know that it exists; else null.
 * `record` says who is lead, who bills whom and whose part a promise is of; it is the record after the change.
 */
export const see = (view: View, record: ProjectRecord, entity: Entity): Entity | Stub | null =>
  seeAs(viewerOf(view, record), entity)

/** As `see`, for many entities: the viewer is worked out once. */
export const seeAs = (viewer: Viewer, entity: Entity): Entity | Stub | null =>
  seers[entity.kind](viewer, entity)

/** Tells whether what `see` gave is the entity itself and not a stub. */
export const isSeen = (seen: Entity | Stub | null): seen is Entity =>
  seen !== null && !('hidden' in seen)

type Seer = (viewer: Viewer, entity: Entity) => Entity | Stub | null

function seerOf<K extends Kind>(kind: K): Seer {
  const is = isKind(kind)
  const narrower = scopedFields(fieldScopes[kind].fields)
  return (viewer, entity) => (is(entity) ? seeOne(viewer, kind, narrower, entity) : null)
}

/** The fields of a kind that fewer may see than the entity itself. */
const scopedFields = (fields: object): [field: string, scope: Scope][] =>
  Object.entries(fields).flatMap(([field, value]) => {
    const scope = scopesByReach.find((known) => known === value)
    return scope === undefined ? [] : [[field, scope]]
  })

function seeOne<K extends Kind>(
  viewer: Viewer,
  kind: K,
  narrower: readonly [field: string, scope: Scope][],
  entity: EntityByKind[K],
): Entity | Stub | null {
  if (!viewer.record.parties.rows.has(viewer.view.party)) return null
  const rule = fieldScopes[kind]
  const whose = rule.whose(entity)
  const { party, role } = viewer.view
  const outside = role === 'supplier' || role === 'guest'
  const named = role !== 'observer' && (rule.also?.(entity).includes(party) ?? false)
  const allowed = outside
    ? outsiderSees(viewer, entity)
    : named || reaches(viewer, rule.scope(entity), whose)
  // What every party sees is what rules scan: an outsider must at least know that there is more.
  const known = rule.stub === true || (outside && rule.scope === everyone)
  if (!allowed) return known ? stubOf(entity) : null
  let seen: EntityByKind[K] = entity
  for (const [field, scope] of narrower) {
    if (!reachesField(viewer, scope, whose, named)) seen = { ...seen, [field]: null }
  }
  return seen
}

const everyone = fieldScopes.stage.scope

const stubOf = ({ kind, id }: Entity): Stub => ({ kind, id, hidden: true })

function reaches(viewer: Viewer, scope: Scope, whose: PartyId | null): boolean {
  switch (scope) {
    case 'open':
    case 'personal':
      return true
    case 'business':
      return viewer.business(whose)
    case 'money':
      return viewer.money(whose)
    case 'private':
      return viewer.private(whose)
    case 'managers':
      return viewer.managers(whose)
  }
}

/** Who has to choose sees what each choice costs, unless they are a shop's hand. */
function reachesField(
  viewer: Viewer,
  scope: Scope,
  whose: PartyId | null,
  named: boolean,
): boolean {
  if (named && scope === 'money') return viewer.view.role !== 'hand'
  return reaches(viewer, scope, whose)
}

const seers: { readonly [K in Kind]: Seer } = {
  project: seerOf('project'),
  party: seerOf('party'),
  participant: seerOf('participant'),
  assembly: seerOf('assembly'),
  stage: seerOf('stage'),
  link: seerOf('link'),
  check: seerOf('check'),
  signOff: seerOf('signOff'),
  hold: seerOf('hold'),
  concession: seerOf('concession'),
  ask: seerOf('ask'),
  handover: seerOf('handover'),
  changeOrder: seerOf('changeOrder'),
  changeLine: seerOf('changeLine'),
  estimateLine: seerOf('estimateLine'),
  decision: seerOf('decision'),
  decisionOption: seerOf('decisionOption'),
  part: seerOf('part'),
  promise: seerOf('promise'),
  openWindow: seerOf('openWindow'),
  slot: seerOf('slot'),
  note: seerOf('note'),
  told: seerOf('told'),
  reading: seerOf('reading'),
  airReading: seerOf('airReading'),
  metalReading: seerOf('metalReading'),
  step: seerOf('step'),
  coat: seerOf('coat'),
  film: seerOf('film'),
  colour: seerOf('colour'),
  tinter: seerOf('tinter'),
  inDate: seerOf('inDate'),
  milestone: seerOf('milestone'),
  shop: seerOf('shop'),
  membership: seerOf('membership'),
  bay: seerOf('bay'),
}
