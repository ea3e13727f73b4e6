import type { Entity, EntityByKind, Kind, Stub } from './entity.ts'
import { kindOf } from './kind-of.ts'
import type { ProjectRecord } from './project-record.ts'
import { must, NoSuchEntity, type Table } from './table.ts'

/** A kind of entity that lies in a project; a shop, its memberships and its bays lie in a shop book. */
export type ProjectKind = Exclude<Kind, 'shop' | 'membership' | 'bay'>

const tables: {
  readonly [K in ProjectKind]: (record: ProjectRecord) => Table<EntityByKind[K]>
} = {
  project: (record) => record.projects,
  party: (record) => record.parties,
  participant: (record) => record.participants,
  assembly: (record) => record.assemblies,
  stage: (record) => record.stages,
  link: (record) => record.links,
  check: (record) => record.checks,
  signOff: (record) => record.signOffs,
  hold: (record) => record.holds,
  concession: (record) => record.concessions,
  ask: (record) => record.asks,
  handover: (record) => record.handovers,
  changeOrder: (record) => record.changeOrders,
  changeLine: (record) => record.changeLines,
  estimateLine: (record) => record.estimateLines,
  decision: (record) => record.decisions,
  decisionOption: (record) => record.decisionOptions,
  part: (record) => record.parts,
  promise: (record) => record.promises,
  openWindow: (record) => record.openWindows,
  slot: (record) => record.slots,
  note: (record) => record.notes,
  told: (record) => record.told,
  reading: (record) => record.readings,
  airReading: (record) => record.airReadings,
  metalReading: (record) => record.metalReadings,
  step: (record) => record.steps,
  coat: (record) => record.coats,
  film: (record) => record.films,
  colour: (record) => record.colours,
  tinter: (record) => record.tinters,
  inDate: (record) => record.inDates,
  milestone: (record) => record.milestones,
}

/** Tells whether entities of that kind lie in a project. */
export const isProjectKind = (kind: string | undefined): kind is ProjectKind =>
  kind !== undefined && kind in tables
const projectKinds = Object.keys(tables).filter(isProjectKind)

/** The table of a project in which an entity with that id lies; undefined where none has such. */
function tableWith(record: ProjectRecord, id: string): Table<Entity> | undefined {
  const kind = kindOf(id)
  return isProjectKind(kind) ? tables[kind](record) : undefined
}

/** Every table of a project, by the kind of what is in it. */
export const tablesOf = (
  record: ProjectRecord,
): { readonly kind: ProjectKind; readonly table: Table<Entity> }[] =>
  projectKinds.map((kind) => ({ kind, table: tables[kind](record) }))

/** Every entity of a record (or of a view of it). */
export const entitiesOf = (record: ProjectRecord): Entity[] =>
  tablesOf(record).flatMap(({ table }) => [...table.rows.values()])

/** Every stub of a view. */
export const stubsOf = (record: ProjectRecord): Stub[] =>
  tablesOf(record).flatMap(({ kind, table }) =>
    [...table.hidden].map((id): Stub => ({ kind, id, hidden: true })),
  )

/** The entity of a project with that id, whatever its kind; undefined where there is none (or it lies in a shop book). */
export const findEntity = (record: ProjectRecord, id: string): Entity | undefined =>
  tableWith(record, id)?.rows.get(id)

/**
 * The entity of a project with that id, whatever its kind.
 * @throws {NoSuchEntity} where there is none, or it lies in a shop book. @throws {Hidden}
 */
export function mustAny(record: ProjectRecord, id: string): Entity {
  const table = tableWith(record, id)
  if (table === undefined) throw new NoSuchEntity(id)
  return must(table, id)
}
