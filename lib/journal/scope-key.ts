import type { Entity, EntityByKind, Kind } from '../record/entity.ts'
import { isKind } from '../record/entity.ts'
import { fieldScopes, type Scope, scopesByReach } from '../record/field-scopes.ts'

/**
 * For whom a part of an entry is: `open`, `personal`, or a scope and whose it is, `business:<party>`, `money:<party>`,
 * `private:<party>`; `<project>` in place of a party where it is the project's own; `+<party>` for further readers.
 */
export type ScopeKey = string

const isPublic = (scope: Scope) => scope === 'open' || scope === 'personal'

/** Scope of an entity and of its narrower fields that say something, with whose they are. */
export interface Scoped {
  readonly base: ScopeKey
  readonly fields: readonly { readonly field: string; readonly key: ScopeKey }[]
  /** The most secret of them all. */
  readonly narrowest: ScopeKey
}

function scopedBy<K extends Kind>(kind: K): (entity: Entity) => Scoped | null {
  const is = isKind(kind)
  const rule = fieldScopes[kind]
  const narrower = Object.entries<unknown>(rule.fields).flatMap(([field, value]) => {
    const scope = scopesByReach.find((known) => known === value)
    return scope === undefined ? [] : [{ field, scope }]
  })
  const keyOf = (entity: EntityByKind[K], scope: Scope): ScopeKey => {
    if (isPublic(scope)) return scope
    const whose = rule.whose(entity) ?? ownRecord(entity)
    const also = (rule.also?.(entity) ?? []).filter((party) => party !== whose)
    return [`${scope}:${whose}`, ...also].join('+')
  }
  return (entity) => {
    if (!is(entity)) return null
    const base = rule.scope(entity)
    const said = new Map<string, unknown>(Object.entries(entity))
    const spoken = narrower.filter(({ field }) => said.get(field) !== null)
    const narrowest = [base, ...spoken.map(({ scope }) => scope)].reduce(narrowerOf)
    return {
      base: keyOf(entity, base),
      fields: narrower.map(({ field, scope }) => ({ field, key: keyOf(entity, scope) })),
      narrowest: keyOf(entity, narrowest),
    }
  }
}

const narrowerOf = (a: Scope, b: Scope): Scope =>
  scopesByReach.indexOf(b) > scopesByReach.indexOf(a) ? b : a

const ownRecord = (entity: Entity): string =>
  'project' in entity ? entity.project : 'shop' in entity ? (entity.shop ?? entity.id) : entity.id

const scopers: { readonly [K in Kind]: (entity: Entity) => Scoped | null } = {
  project: scopedBy('project'),
  party: scopedBy('party'),
  participant: scopedBy('participant'),
  assembly: scopedBy('assembly'),
  stage: scopedBy('stage'),
  link: scopedBy('link'),
  check: scopedBy('check'),
  signOff: scopedBy('signOff'),
  hold: scopedBy('hold'),
  concession: scopedBy('concession'),
  ask: scopedBy('ask'),
  handover: scopedBy('handover'),
  changeOrder: scopedBy('changeOrder'),
  changeLine: scopedBy('changeLine'),
  estimateLine: scopedBy('estimateLine'),
  decision: scopedBy('decision'),
  decisionOption: scopedBy('decisionOption'),
  part: scopedBy('part'),
  promise: scopedBy('promise'),
  openWindow: scopedBy('openWindow'),
  slot: scopedBy('slot'),
  note: scopedBy('note'),
  told: scopedBy('told'),
  reading: scopedBy('reading'),
  airReading: scopedBy('airReading'),
  metalReading: scopedBy('metalReading'),
  step: scopedBy('step'),
  coat: scopedBy('coat'),
  film: scopedBy('film'),
  colour: scopedBy('colour'),
  tinter: scopedBy('tinter'),
  inDate: scopedBy('inDate'),
  milestone: scopedBy('milestone'),
  shop: scopedBy('shop'),
  membership: scopedBy('membership'),
  bay: scopedBy('bay'),
}

/** For whom an entity and its fields are. */
export function scopedOf(entity: Entity): Scoped {
  const scoped = scopers[entity.kind](entity)
  if (scoped === null) throw new Error(`${entity.kind} has no scope.`)
  return scoped
}

/** The parts of a key: its scope, whose it is (a party or the project), and further readers. */
export function readScopeKey(key: ScopeKey): {
  readonly scope: Scope
  readonly whose: string | null
  readonly also: readonly string[]
} {
  const [first = '', ...also] = key.split('+')
  const [name, whose] = first.split(':')
  const scope = scopesByReach.find((known) => known === name)
  if (scope === undefined) throw new Error(`"${key}" is no scope of a journal's part.`)
  return { scope, whose: whose ?? null, also }
}

/**
 * For whom an input is: as few as for the most secret entity that it makes. Where it makes secrets of more than one party,
 * only the party that gave it keeps it.
 */
export function scopeOfInput(entities: readonly Entity[], givenBy: string): ScopeKey {
  const keys = new Set(entities.map((entity) => scopedOf(entity).narrowest))
  const rank = (key: ScopeKey) => scopesByReach.indexOf(readScopeKey(key).scope)
  const most = Math.max(0, ...[...keys].map(rank))
  const top = [...keys].filter((key) => rank(key) === most)
  return top.length > 1 ? `private:${givenBy}` : (top[0] ?? 'open')
}
