import type { Entity, EntityByKind, Kind, Stub } from './entity.ts'
import { isKind } from './entity.ts'
import type { ProjectId, ShopId } from './ids.ts'
import { emptyTable, type Table, withRows } from './table.ts'
import { type Versions, versionsAfter } from './versions.ts'

type TableOf<K extends Kind> = Table<EntityByKind[K]>

/** Everything that gate and money read of one project. `versions`: at which version of the record an entity last changed. */
export interface ProjectRecord {
  readonly id: ProjectId
  readonly version: number
  readonly versions: Versions
  readonly projects: TableOf<'project'>
  readonly parties: TableOf<'party'>
  readonly participants: TableOf<'participant'>
  readonly assemblies: TableOf<'assembly'>
  readonly stages: TableOf<'stage'>
  readonly links: TableOf<'link'>
  readonly checks: TableOf<'check'>
  readonly signOffs: TableOf<'signOff'>
  readonly holds: TableOf<'hold'>
  readonly concessions: TableOf<'concession'>
  readonly asks: TableOf<'ask'>
  readonly handovers: TableOf<'handover'>
  readonly changeOrders: TableOf<'changeOrder'>
  readonly changeLines: TableOf<'changeLine'>
  readonly estimateLines: TableOf<'estimateLine'>
  readonly decisions: TableOf<'decision'>
  readonly decisionOptions: TableOf<'decisionOption'>
  readonly parts: TableOf<'part'>
  readonly promises: TableOf<'promise'>
  readonly openWindows: TableOf<'openWindow'>
  readonly slots: TableOf<'slot'>
  readonly notes: TableOf<'note'>
  readonly told: TableOf<'told'>
  readonly readings: TableOf<'reading'>
  readonly airReadings: TableOf<'airReading'>
  readonly metalReadings: TableOf<'metalReading'>
  readonly steps: TableOf<'step'>
  readonly coats: TableOf<'coat'>
  readonly films: TableOf<'film'>
  readonly colours: TableOf<'colour'>
  readonly tinters: TableOf<'tinter'>
  readonly inDates: TableOf<'inDate'>
  readonly milestones: TableOf<'milestone'>
}

/** Everything of one shop over all its projects; `slots` are those at its own bays. */
export interface ShopRecord {
  readonly id: ShopId
  readonly version: number
  readonly versions: Versions
  readonly shops: TableOf<'shop'>
  readonly memberships: TableOf<'membership'>
  readonly bays: TableOf<'bay'>
  readonly slots: TableOf<'slot'>
}

/** A project before its first command. */
export function emptyProjectRecord(id: ProjectId): ProjectRecord {
  return {
    id,
    version: 0,
    versions: new Map(),
    projects: emptyTable(),
    parties: emptyTable(),
    participants: emptyTable(),
    assemblies: emptyTable(),
    stages: emptyTable(),
    links: emptyTable(),
    checks: emptyTable(),
    signOffs: emptyTable(),
    holds: emptyTable(),
    concessions: emptyTable(),
    asks: emptyTable(),
    handovers: emptyTable(),
    changeOrders: emptyTable(),
    changeLines: emptyTable(),
    estimateLines: emptyTable(),
    decisions: emptyTable(),
    decisionOptions: emptyTable(),
    parts: emptyTable(),
    promises: emptyTable(),
    openWindows: emptyTable(),
    slots: emptyTable(),
    notes: emptyTable(),
    told: emptyTable(),
    readings: emptyTable(),
    airReadings: emptyTable(),
    metalReadings: emptyTable(),
    steps: emptyTable(),
    coats: emptyTable(),
    films: emptyTable(),
    colours: emptyTable(),
    tinters: emptyTable(),
    inDates: emptyTable(),
    milestones: emptyTable(),
  }
}

/** A shop book before its first command. */
export function emptyShopRecord(id: ShopId): ShopRecord {
  return {
    id,
    version: 0,
    versions: new Map(),
    shops: emptyTable(),
    memberships: emptyTable(),
    bays: emptyTable(),
    slots: emptyTable(),
  }
}

/** What changes a record: entities as they will be, and, in a view, stubs of those that may no longer be seen. */
export interface Step {
  readonly version: number
  readonly entities: readonly Entity[]
  readonly stubs?: readonly Stub[]
}

function merge<K extends Kind>(table: TableOf<K>, kind: K, step: Step): TableOf<K> {
  const stubs = (step.stubs ?? []).filter((stub) => stub.kind === kind).map((stub) => stub.id)
  return withRows<EntityByKind[K]>(table, step.entities.filter(isKind(kind)), stubs)
}

/** The project's record after a step; tables that the step leaves alone are the same objects. */
export function projectAfter(record: ProjectRecord, step: Step): ProjectRecord {
  return {
    id: record.id,
    version: step.version,
    versions: versionsAfter(record.versions, step),
    projects: merge(record.projects, 'project', step),
    parties: merge(record.parties, 'party', step),
    participants: merge(record.participants, 'participant', step),
    assemblies: merge(record.assemblies, 'assembly', step),
    stages: merge(record.stages, 'stage', step),
    links: merge(record.links, 'link', step),
    checks: merge(record.checks, 'check', step),
    signOffs: merge(record.signOffs, 'signOff', step),
    holds: merge(record.holds, 'hold', step),
    concessions: merge(record.concessions, 'concession', step),
    asks: merge(record.asks, 'ask', step),
    handovers: merge(record.handovers, 'handover', step),
    changeOrders: merge(record.changeOrders, 'changeOrder', step),
    changeLines: merge(record.changeLines, 'changeLine', step),
    estimateLines: merge(record.estimateLines, 'estimateLine', step),
    decisions: merge(record.decisions, 'decision', step),
    decisionOptions: merge(record.decisionOptions, 'decisionOption', step),
    parts: merge(record.parts, 'part', step),
    promises: merge(record.promises, 'promise', step),
    openWindows: merge(record.openWindows, 'openWindow', step),
    slots: merge(record.slots, 'slot', step),
    notes: merge(record.notes, 'note', step),
    told: merge(record.told, 'told', step),
    readings: merge(record.readings, 'reading', step),
    airReadings: merge(record.airReadings, 'airReading', step),
    metalReadings: merge(record.metalReadings, 'metalReading', step),
    steps: merge(record.steps, 'step', step),
    coats: merge(record.coats, 'coat', step),
    films: merge(record.films, 'film', step),
    colours: merge(record.colours, 'colour', step),
    tinters: merge(record.tinters, 'tinter', step),
    inDates: merge(record.inDates, 'inDate', step),
    milestones: merge(record.milestones, 'milestone', step),
  }
}

/** The shop book after a step. */
export function shopAfter(record: ShopRecord, step: Step): ShopRecord {
  return {
    id: record.id,
    version: step.version,
    versions: versionsAfter(record.versions, step),
    shops: merge(record.shops, 'shop', step),
    memberships: merge(record.memberships, 'membership', step),
    bays: merge(record.bays, 'bay', step),
    slots: merge(record.slots, 'slot', step),
  }
}
