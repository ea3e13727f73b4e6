import { leadOf, ownerOf } from '../record/actor.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { stageNumber } from './labels.ts'
import type { Reader } from './reader.ts'

/** A party by its name; `you` where it is the reader's own. */
export function partyName(id: string | null, record: ProjectRecord, reader?: Reader): string {
  if (id === null) return 'somebody'
  if (reader !== undefined && reader.view.party === id) return 'you'
  return record.parties.rows.get(id)?.name ?? 'a party that has left'
}

/** A person by their name, as far as this reader may know it. */
export const personName = (
  id: string | null,
  people: { readonly [person: string]: string },
): string => (id === null ? 'somebody' : (people[id] ?? 'somebody'))

/** An assembly by its name. */
export const assemblyName = (id: string, record: ProjectRecord): string =>
  record.assemblies.rows.get(id)?.name ?? 'an assembly'

/** `38 · Engine ready to fit` */
export function stageName(id: string, record: ProjectRecord): string {
  const stage = record.stages.rows.get(id)
  return stage === undefined ? 'a stage' : `${stageNumber(stage.number)} · ${stage.name}`
}

/** Several names as the reader says them: `Engine, Gearbox and Clutch`. */
export const listed = (names: readonly string[], locale: string, type: 'and' | 'or' = 'and') =>
  new Intl.ListFormat(locale, { type: type === 'and' ? 'conjunction' : 'disjunction' }).format(
    names,
  )

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1)

/** With a capital, for the beginning of a sentence. */
export const atStart = (text: string): string => capital(text)

/** The verb that goes with a party: *you release it*, *Bexwater Engines releases it*. */
export const does = (party: string | null, reader: Reader, you: string, others: string): string =>
  party !== null && reader.view.party === party ? you : others

/** What the reader is in this project: *lead*, *owner*, or nothing worth saying. */
export function standing(record: ProjectRecord, reader: Reader): string {
  if (leadOf(record)?.id === reader.view.party) return 'lead'
  if (ownerOf(record)?.id === reader.view.party) return 'owner'
  return ''
}

/** An entity of any kind by what a person calls it. */
export function entityName(id: string, record: ProjectRecord): string {
  const stage = record.stages.rows.get(id)
  if (stage !== undefined) return stageName(id, record)
  const link = record.links.rows.get(id)
  if (link !== undefined) return `${stageName(link.from, record)} › ${stageName(link.to, record)}`
  const order = record.changeOrders.rows.get(id)
  if (order !== undefined) return `change order ${order.number}`
  const check = record.checks.rows.get(id)
  if (check !== undefined) return check.name
  const hold = record.holds.rows.get(id)
  if (hold !== undefined) return hold.name
  const handover = record.handovers.rows.get(id)
  if (handover !== undefined) {
    const names = handover.assemblies.map((assembly) => assemblyName(assembly, record))
    return `handover of ${names.join(', ')}`
  }
  const slot = record.slots.rows.get(id)
  if (slot !== undefined) return `slot for ${assemblyName(slot.assembly, record)}`
  const named =
    record.assemblies.rows.get(id) ??
    record.parts.rows.get(id) ??
    record.parties.rows.get(id) ??
    record.projects.rows.get(id)
  if (named !== undefined) return named.name
  const decision = record.decisions.rows.get(id)
  if (decision !== undefined) return decision.question
  const hidden = record.changeOrders.hidden.has(id) || record.decisions.hidden.has(id)
  return hidden ? 'something that you may not see' : 'it'
}
