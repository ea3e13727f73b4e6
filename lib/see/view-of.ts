import type { View } from '../record/actor.ts'
import { entitiesOf } from '../record/any-entity.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { keyOf, tableView } from './table-view.ts'
import { viewerOf } from './viewer.ts'

const projects = tableView('project')
const parties = tableView('party')
const participants = tableView('participant')
const assemblies = tableView('assembly')
const stages = tableView('stage')
const links = tableView('link')
const checks = tableView('check')
const signOffs = tableView('signOff')
const holds = tableView('hold')
const concessions = tableView('concession')
const asks = tableView('ask')
const handovers = tableView('handover')
const changeOrders = tableView('changeOrder')
const changeLines = tableView('changeLine')
const estimateLines = tableView('estimateLine')
const decisions = tableView('decision')
const decisionOptions = tableView('decisionOption')
const parts = tableView('part')
const promises = tableView('promise')
const openWindows = tableView('openWindow')
const slots = tableView('slot')
const notes = tableView('note')
const told = tableView('told')
const readings = tableView('reading')
const airReadings = tableView('airReading')
const metalReadings = tableView('metalReading')
const steps = tableView('step')
const coats = tableView('coat')
const films = tableView('film')
const colours = tableView('colour')
const tinters = tableView('tinter')
const inDates = tableView('inDate')
const milestones = tableView('milestone')

const views = new WeakMap<ProjectRecord, Map<string, ProjectRecord>>()

/** The record as that view may see it, with stubs of what gate rules may meet. Worked out once per record and view. */
export function viewOf(record: ProjectRecord, view: View): ProjectRecord {
  const byView = views.get(record) ?? new Map<string, ProjectRecord>()
  views.set(record, byView)
  const known = byView.get(keyOf(view))
  if (known !== undefined) return known
  const made = make(record, view)
  byView.set(keyOf(view), made)
  return made
}

function make(record: ProjectRecord, view: View): ProjectRecord {
  const viewer = viewerOf(view, record)
  const seen: ProjectRecord = {
    id: record.id,
    version: record.version,
    versions: new Map(),
    projects: projects(viewer, record.projects),
    parties: parties(viewer, record.parties),
    participants: participants(viewer, record.participants),
    assemblies: assemblies(viewer, record.assemblies),
    stages: stages(viewer, record.stages),
    links: links(viewer, record.links),
    checks: checks(viewer, record.checks),
    signOffs: signOffs(viewer, record.signOffs),
    holds: holds(viewer, record.holds),
    concessions: concessions(viewer, record.concessions),
    asks: asks(viewer, record.asks),
    handovers: handovers(viewer, record.handovers),
    changeOrders: changeOrders(viewer, record.changeOrders),
    changeLines: changeLines(viewer, record.changeLines),
    estimateLines: estimateLines(viewer, record.estimateLines),
    decisions: decisions(viewer, record.decisions),
    decisionOptions: decisionOptions(viewer, record.decisionOptions),
    parts: parts(viewer, record.parts),
    promises: promises(viewer, record.promises),
    openWindows: openWindows(viewer, record.openWindows),
    slots: slots(viewer, record.slots),
    notes: notes(viewer, record.notes),
    told: told(viewer, record.told),
    readings: readings(viewer, record.readings),
    airReadings: airReadings(viewer, record.airReadings),
    metalReadings: metalReadings(viewer, record.metalReadings),
    steps: steps(viewer, record.steps),
    coats: coats(viewer, record.coats),
    films: films(viewer, record.films),
    colours: colours(viewer, record.colours),
    tinters: tinters(viewer, record.tinters),
    inDates: inDates(viewer, record.inDates),
    milestones: milestones(viewer, record.milestones),
  }
  const versions = new Map<string, number>()
  for (const { id } of entitiesOf(seen)) {
    const version = record.versions.get(id)
    if (version !== undefined) versions.set(id, version)
  }
  return { ...seen, versions }
}
