import type { Hold, Link, Stage } from '../../lib/record/entities/work.ts'
import type { ProjectRecord } from '../../lib/record/project-record.ts'
import { all } from '../../lib/record/table.ts'

/** An unmet condition in its plainest form. */
export interface Unmet {
  readonly rule: string
  readonly entity: string
}

// Written anew from DESIGN §4, slowly and without lib/gate: what both say is hardly wrong in both.

const over = ['ended', 'signed off', 'in doubt']

const hoursBetween = (from: string, to: string): number =>
  (Date.parse(to) - Date.parse(from)) / 3_600_000

const stageOf = (record: ProjectRecord, id: string): Stage => {
  const stage = all(record.stages).find((one) => one.id === id)
  if (stage === undefined) throw new Error(`No stage ${id}.`)
  return stage
}

const leadOf = (record: ProjectRecord) => all(record.parties).find((party) => party.lead)?.id

/** Everything that a stage's hands are on. */
export const touches = (stage: Stage): string[] => [
  ...stage.assemblies,
  ...stage.fits,
  ...stage.removes,
  ...(stage.host === null ? [] : [stage.host]),
]

/** What of a stage's conditions is unmet at that time, conceded or not. */
export function unmetAt(record: ProjectRecord, stage: Stage, at: string): Unmet[] {
  return [
    ...beforeIt(record, stage, at),
    ...custodyUnmet(record, stage),
    ...fittedUnmet(record, stage),
    ...boughtAndAgreed(record, stage),
    ...slotUnmet(record, stage, at),
    ...readyToWork(record, stage, at),
  ]
}

/** Rules 1, 2 and 7: the stages before it. */
function beforeIt(record: ProjectRecord, stage: Stage, at: string): Unmet[] {
  const found: Unmet[] = []
  for (const link of all(record.links)) {
    if (link.to !== stage.id || link.removedAt !== null) continue
    const before = stageOf(record, link.from)
    if (before.removedAt !== null) continue
    if (before.state !== 'signed off') found.push({ rule: 'predecessor', entity: before.id })
    else if (!hasCountersigns(record, before))
      found.push({ rule: 'countersign', entity: before.id })
    if (over.includes(before.state) && before.endedAt !== null) {
      const coats = all(record.coats).filter((coat) => coat.stage === before.id)
      const ends = coats.map(({ endedAt }) => endedAt).sort()
      const end = ends.at(-1) ?? before.endedAt
      const hours = hoursBetween(end, at)
      const cures = link.leastLagHours > 0
      if (cures && (hours < link.leastLagHours || !hasCured(record, link, end, at)))
        found.push({ rule: 'least-lag', entity: link.id })
      if (link.greatestLagHours !== null && hours > link.greatestLagHours)
        found.push({ rule: 'greatest-lag', entity: link.id })
    }
    for (const hold of all(record.holds)) {
      if (hold.stage !== before.id || hold.clearedAt !== null || hold.removedAt !== null) continue
      const visited = hold.visitAt !== null && hold.visitAt <= at && isNoticeOver(record, hold, at)
      if (hold.point === 'hold' || hold.state !== 'invited' || !visited)
        found.push({ rule: 'hold', entity: hold.id })
    }
  }
  return found
}

/** Rule 7: day after day from the invitation, Saturdays and Sundays not counted. */
function isNoticeOver(record: ProjectRecord, hold: Hold, at: string): boolean {
  const zone = all(record.projects)[0]?.timeZone ?? 'UTC'
  const wall = (when: string) =>
    new Intl.DateTimeFormat('sv-SE', {
      timeZone: zone,
      dateStyle: 'short',
      timeStyle: 'short',
    }).format(new Date(when))
  if (hold.invitedAt === null) return false
  const [day = '', time = ''] = wall(hold.invitedAt).split(' ')
  const date = new Date(`${day}T00:00:00Z`)
  for (let left = hold.noticeDays; left > 0; ) {
    date.setUTCDate(date.getUTCDate() + 1)
    if (date.getUTCDay() !== 0 && date.getUTCDay() !== 6) left--
  }
  return wall(at) >= `${date.toISOString().slice(0, 10)} ${time}`
}

const hasCountersigns = (record: ProjectRecord, stage: Stage): boolean =>
  stage.countersigns.every((party) =>
    all(record.signOffs).some(
      (sign) =>
        sign.stage === stage.id &&
        sign.party === party &&
        sign.type === 'countersign' &&
        sign.withdrawnAt === null,
    ),
  )

/** Rule 1: spell by spell, how much of the cure the logged metal has let it do. */
function hasCured(record: ProjectRecord, link: Link, end: string, at: string): boolean {
  const { curesAt } = link
  const log = all(record.metalReadings)
    .filter((one) => one.stage === link.from && one.takenAt <= at)
    .sort((a, b) => (a.takenAt < b.takenAt ? -1 : 1))
  if (curesAt === null || log.length === 0) return true
  const turns = [end, ...log.map(({ takenAt }) => takenAt).filter((when) => when > end), at]
  const done = turns.slice(1).map((to, i) => {
    const from = turns[i] ?? end
    const metal = log.filter(({ takenAt }) => takenAt <= from).at(-1)?.celsius ?? curesAt
    const speed = metal < 10 ? 0 : Math.min(1, 2 ** ((metal - curesAt) / 10))
    return hoursBetween(from, to) * speed
  })
  // To a millisecond.
  return done.reduce((sum, hours) => sum + hours, 0) >= link.leastLagHours - 3e-7
}

/** Rule 3: in the party's custody, and nobody else at it. */
export function custodyUnmet(record: ProjectRecord, stage: Stage): Unmet[] {
  const found: Unmet[] = []
  for (const assembly of all(record.assemblies)) {
    if (!touches(stage).includes(assembly.id)) continue
    if (assembly.custodian !== stage.party) found.push({ rule: 'custody', entity: assembly.id })
    for (const other of all(record.stages)) {
      if (other.id === stage.id || other.state !== 'in work' || other.removedAt !== null) continue
      if ((other.exclusive || stage.exclusive) && touches(other).includes(assembly.id))
        found.push({ rule: 'exclusive-use', entity: assembly.id })
    }
  }
  return found
}

/** Rule 4. */
function fittedUnmet(record: ProjectRecord, stage: Stage): Unmet[] {
  return all(record.assemblies).flatMap(({ id, host }) => [
    ...(stage.needsFitted.includes(id) && host === null
      ? [{ rule: 'must-be-fitted', entity: id }]
      : []),
    ...(stage.needsOff.includes(id) && host !== null ? [{ rule: 'must-be-off', entity: id }] : []),
  ])
}

/** Rules 5 and 6. */
function boughtAndAgreed(record: ProjectRecord, stage: Stage): Unmet[] {
  const parts = all(record.parts).filter(
    (part) =>
      part.stages.includes(stage.id) && part.withdrawnAt === null && part.state !== 'inspected',
  )
  const order = all(record.changeOrders).find(({ id }) => id === stage.changeOrder)
  const decision = all(record.decisions).find(({ id }) => id === stage.decision)
  return [
    ...parts.map(({ id }) => ({ rule: 'part', entity: id })),
    ...(order !== undefined && order.state !== 'approved'
      ? [{ rule: 'change-order', entity: order.id }]
      : []),
    ...(decision?.state === 'asked' ? [{ rule: 'decision', entity: decision.id }] : []),
  ]
}

/** Rule 9: an agreed slot of its own that runs at that time. The entity that a refusal names isn't judged here. */
function slotUnmet(record: ProjectRecord, stage: Stage, at: string): Unmet[] {
  if (!stage.needsBay) return []
  const running = all(record.slots).some(
    (slot) =>
      slot.state === 'agreed' &&
      slot.from <= at &&
      at < slot.to &&
      (slot.stage === stage.id ||
        (slot.party === stage.party && touches(stage).includes(slot.assembly))),
  )
  return running ? [] : [{ rule: 'slot', entity: '' }]
}

/** Rules 8, 10 and 11: air and surface, what is in date, precautions, hot work, agreed payments. */
function readyToWork(record: ProjectRecord, stage: Stage, at: string): Unmet[] {
  const found: Unmet[] = []
  const say = (rule: string, entity: string = stage.id) => found.push({ rule, entity })
  if (stage.hazards.length > 0 && stage.precautionsAt === null) say('precautions')
  if (stage.hazards.includes('hot work'))
    for (const { id, host, holdsFuel } of all(record.assemblies))
      if (holdsFuel && host !== null) say('hot work', id)
  for (const one of all(record.milestones))
    if (one.stage === stage.id && one.removedAt === null && one.metAt === null)
      say('milestone', one.id)
  const zone = all(record.projects)[0]?.timeZone ?? 'UTC'
  const today = new Intl.DateTimeFormat('en-CA', { timeZone: zone }).format(new Date(at))
  const isInDate = (thing: string) =>
    all(record.inDates).some(
      (one) =>
        one.party === stage.party &&
        one.thing === thing &&
        one.withdrawnAt === null &&
        one.until >= today,
    )
  if (stage.inDate.some((thing) => !isInDate(thing))) say('in-date')
  if (stage.airAgeMost !== null && airAmiss(record, stage, at)) say('air')
  return found
}

function airAmiss(record: ProjectRecord, stage: Stage, at: string): boolean {
  const readings = all(record.airReadings).filter((one) => one.stage === stage.id)
  const latest = readings.reduce<(typeof readings)[number] | undefined>(
    (last, one) => (last === undefined || one.takenAt >= last.takenAt ? one : last),
    undefined,
  )
  if (latest === undefined) return true
  const { air, surface, humidity, takenAt } = latest
  const g = Math.log(humidity / 100) + (17.62 * air) / (243.12 + air)
  const over = surface - (243.12 * g) / (17.62 - g)
  return (
    hoursBetween(takenAt, at) * 60 > (stage.airAgeMost ?? 0) ||
    over < (stage.dewMarginLeast ?? 3) ||
    humidity > (stage.humidityMost ?? 100) ||
    surface < (stage.surfaceLeast ?? surface) ||
    surface > (stage.surfaceMost ?? surface)
  )
}

/** Rules that anybody may ever concede, where it is no safety work. */
const concedable = [
  'predecessor',
  'countersign',
  'least-lag',
  'greatest-lag',
  'air',
  'milestone',
  'must-be-fitted',
  'must-be-off',
  'part',
  'decision',
  'hold',
  'slot',
  'check',
]

/** Whether safety is at stake in that condition of a stage: brakes, steering, restraints, structure, fuel. */
function isSafety(record: ProjectRecord, stage: Stage, { rule, entity }: Unmet): boolean {
  if (stage.safety) return true
  const link = all(record.links).find(({ id }) => id === entity)
  const hold = all(record.holds).find(({ id }) => id === entity)
  if (link?.safety === true && (rule === 'least-lag' || rule === 'greatest-lag')) return true
  const before = rule === 'hold' ? hold?.stage : (link?.from ?? entity)
  return all(record.stages).some(({ id, safety }) => id === before && safety)
}

/** Whether that condition may be conceded at all (DESIGN §4: what is marked ●, and safety, never). */
export function mayBeConceded(record: ProjectRecord, stage: Stage, unmet: Unmet): boolean {
  const hold = all(record.holds).find(({ id }) => id === unmet.entity)
  if (unmet.rule === 'hold' && hold?.point !== 'witness') return false
  return concedable.includes(unmet.rule) && !isSafety(record, stage, unmet)
}

/** Whether it is conceded: by the stage's party and the lead, both, with a concession that stands. */
export function isConceded(record: ProjectRecord, stage: Stage, unmet: Unmet): boolean {
  if (!mayBeConceded(record, stage, unmet)) return false
  const lead = leadOf(record)
  return all(record.concessions).some(
    ({ stage: on, rule, entity, withdrawnAt, parties }) =>
      on === stage.id &&
      rule === unmet.rule &&
      (entity === unmet.entity || unmet.entity === '') &&
      withdrawnAt === null &&
      parties.includes(stage.party) &&
      (lead === undefined || parties.includes(lead)),
  )
}

/** What is neither met nor conceded. */
export const standsInTheWay = (record: ProjectRecord, stage: Stage, at: string): Unmet[] =>
  unmetAt(record, stage, at).filter((unmet) => !isConceded(record, stage, unmet))

/** Checks of a stage that are neither passed nor conceded. */
export const openChecks = (record: ProjectRecord, stage: Stage): Unmet[] =>
  all(record.checks)
    .filter((one) => one.stage === stage.id && one.removedAt === null && one.state !== 'passed')
    .map(({ id }) => ({ rule: 'check', entity: id }))
    .filter((unmet) => !isConceded(record, stage, unmet))
