import type { Entity } from '../record/entity.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Table } from '../record/table.ts'

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
