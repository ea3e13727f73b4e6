import type { Entity } from './entity.ts'
import type { ProjectRecord } from './project-record.ts'
import { must, NoSuchEntity, type Table } from './table.ts'

const tableByPrefix: { readonly [prefix: string]: (record: ProjectRecord) => Table<Entity> } = {
  prj: (record) => record.projects,
  pty: (record) => record.parties,
  ptc: (record) => record.participants,
  asm: (record) => record.assemblies,
  stg: (record) => record.stages,
  lnk: (record) => record.links,
  chk: (record) => record.checks,
  sgn: (record) => record.signOffs,
  hld: (record) => record.holds,
  con: (record) => record.concessions,
  ask: (record) => record.asks,
  hnd: (record) => record.handovers,
  cho: (record) => record.changeOrders,
  chl: (record) => record.changeLines,
  esl: (record) => record.estimateLines,
  dcs: (record) => record.decisions,
  opt: (record) => record.decisionOptions,
  prt: (record) => record.parts,
  prm: (record) => record.promises,
  win: (record) => record.openWindows,
  slt: (record) => record.slots,
  nte: (record) => record.notes,
  tld: (record) => record.told,
}

/** The entity of a project with that id, whatever its kind; undefined where there is none (or it lies in a shop book). */
export const findEntity = (record: ProjectRecord, id: string): Entity | undefined =>
  tableByPrefix[id.slice(0, 3)]?.(record).rows.get(id)

/**
 * The entity of a project with that id, whatever its kind.
 * @throws {NoSuchEntity} where there is none, or it lies in a shop book. @throws {Hidden}
 */
export function mustAny(record: ProjectRecord, id: string): Entity {
  const table = tableByPrefix[id.slice(0, 3)]
  if (table === undefined) throw new NoSuchEntity(id)
  return must(table(record), id)
}
