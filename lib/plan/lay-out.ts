import { gateOf } from '../gate/gate.ts'
import { slotsForStage } from '../gate/indexes.ts'
import { overSince } from '../gate/over-since.ts'
import type { GateCondition } from '../gate/rule.ts'
import type { Shop } from '../record/entities/people.ts'
import type { Link, Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { Instant } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { instantAt } from '../record/zoned-time.ts'
import { type WorkingCalendar, workingCalendar } from '../shop/working-calendar.ts'
import { type Activity, criticalPath, type Timing } from './critical-path.ts'
import type { LaidOut, LaidStage, WaitsFor } from './laid-out.ts'

const HOUR_MS = 3_600_000
/** For who takes part without a shop of their own here: a supplier, an owner who does some of it. */
const ORDINARY = { opensAt: '08:00', closesAt: '17:00' }

const isOver = ({ state }: Stage): boolean =>
  state === 'ended' || state === 'signed off' || state === 'in doubt'
const isBegun = ({ state }: Stage): boolean => state === 'in work' || state === 'paused'
const toInstant = (ms: number): Instant => Instant.parse(new Date(ms).toISOString())

/**
 * Lays the stages of a record along the days: what is over where it was, what is in work up to the rest of its hours from now, what
 * is to come as early as its links, their lags, promised parts and agreed slots let it, in the working days of its shop. It asks
 * nobody whether hands or bays are free and holds no odds: it is how the build order stands, not a plan.
 */
export function layOut(record: ProjectRecord, shops: readonly Shop[], now: Instant): LaidOut {
  const stages = all(record.stages)
    .filter(({ removedAt }) => removedAt === null)
    .toSorted((a, b) => a.number - b.number || (a.id < b.id ? -1 : 1))
  const ground = groundOf(record, shops, now)
  const links = all(record.links).filter(({ removedAt }) => removedAt === null)
  const linksTo = Map.groupBy(links, ({ to }) => to)
  const over = new Map(stages.filter(isOver).map((stage) => [stage.id, whenOver(stage, ground)]))
  const begins = new Map(
    stages
      .filter((stage) => !isOver(stage))
      .map((stage) => [stage.id, beginsOf(stage, linksTo.get(stage.id) ?? [], over, ground)]),
  )
  const open = stages.filter(({ id }) => begins.has(id))
  const { timings, run, end } = criticalPath(
    open.map((stage) => activityOf(stage, begins.get(stage.id)?.ms ?? ground.now, ground)),
    links.flatMap(({ from, to, leastLagHours }) =>
      // What is begun waits for nothing any more.
      begins.has(from) && begins.get(to)?.waits === true
        ? [{ from, to, lagMs: leastLagHours * HOUR_MS }]
        : [],
    ),
  )
  const onRun = new Set(run)
  const laid = stages.map((stage): LaidStage => {
    const was = over.get(stage.id)
    const base = { stage: stage.id, hoursUnknown: hoursOf(stage) === null }
    if (was !== undefined) {
      const from = toInstant(was.from)
      const to = toInstant(was.to)
      const waitsFor: WaitsFor = { kind: 'nothing' }
      return { ...base, from, to, tense: 'over', ...nothingLeft, waitsFor }
    }
    const timing = timings.get(stage.id)
    const begun = isBegun(stage)
    const from = begun ? Date.parse(stage.startedAt ?? now) : (timing?.earliestFrom ?? ground.now)
    const conditions = begun ? [] : ground.conditions(stage)
    return {
      ...base,
      from: toInstant(Math.min(from, timing?.earliestTo ?? from)),
      to: toInstant(timing?.earliestTo ?? from),
      tense: begun ? 'begun' : 'to come',
      undated: conditions.some(isUndated),
      floatDays: timing === undefined ? 0 : timing.floatHours / ground.calendar(stage).dayHours,
      onRun: onRun.has(stage.id),
      waitsFor: begun ? { kind: 'nothing' } : waitsForOf(timing, begins.get(stage.id), record),
    }
  })
  return {
    stages: new Map(laid.map((one) => [one.stage, one])),
    run: run.flatMap((id) => record.stages.rows.get(id)?.id ?? []),
    end: end === null ? null : toInstant(end),
  }
}

const nothingLeft = { undated: false, floatDays: null, onRun: false } as const

interface Ground {
  readonly record: ProjectRecord
  readonly now: number
  readonly calendar: (stage: Stage) => WorkingCalendar
  readonly zone: string
  readonly conditions: (stage: Stage) => readonly GateCondition[]
}

function groundOf(record: ProjectRecord, shops: readonly Shop[], now: Instant): Ground {
  const zone = record.projects.rows.get(record.id)?.timeZone ?? 'UTC'
  const calendars = new Map<string, WorkingCalendar>()
  const calendar = ({ party }: Stage): WorkingCalendar => {
    const known = calendars.get(party)
    if (known !== undefined) return known
    const own = record.parties.rows.get(party)?.shop
    const shop = own === null ? undefined : shops.find(({ id }) => id === own)
    const made = workingCalendar(shop ?? { ...ORDINARY, timeZone: zone })
    calendars.set(party, made)
    return made
  }
  const gate = gateOf(record, now)
  return { record, now: Date.parse(now), calendar, zone, conditions: gate.conditions }
}

/** The hours that a stage is likely to take; null where nobody has said. */
function hoursOf({ hoursLeast, hoursLikely, hoursMost }: Stage): number | null {
  if (hoursLikely !== null) return hoursLikely
  if (hoursLeast !== null && hoursMost !== null) return (hoursLeast + hoursMost) / 2
  return hoursLeast ?? hoursMost
}

const hoursDrawn = (stage: Stage, calendar: WorkingCalendar): number =>
  hoursOf(stage) ?? calendar.dayHours

/** When it was done, as recorded; where only its end is known, its hours before that. */
function whenOver(stage: Stage, ground: Ground) {
  const at = overSince(stage) ?? stage.signedOffAt ?? stage.startedAt
  const to = at === null ? ground.now : Date.parse(at)
  const calendar = ground.calendar(stage)
  const from =
    stage.startedAt === null
      ? calendar.before(to, hoursDrawn(stage, calendar))
      : Date.parse(stage.startedAt)
  return { from: Math.min(from, to), to }
}

/** The soonest that a stage can begin or go on, as far as no open stage comes before it. */
interface Begins {
  readonly ms: number
  readonly for: WaitsFor
  readonly waits: boolean
}

function beginsOf(
  stage: Stage,
  links: readonly Link[],
  over: ReadonlyMap<string, { readonly to: number }>,
  ground: Ground,
): Begins {
  const now: Begins = { ms: ground.now, for: { kind: 'nothing' }, waits: !isBegun(stage) }
  if (isBegun(stage)) return now
  const cures = links.flatMap(({ from, leastLagHours }): Begins[] => {
    const was = over.get(from)
    if (was === undefined) return []
    const ms = was.to + leastLagHours * HOUR_MS
    return [{ ms, for: { kind: 'stage', stage: from }, waits: true }]
  })
  const parts = ground.conditions(stage).flatMap((condition): Begins[] => {
    if (condition.rule !== 'part' || condition.is !== 'ordered' || condition.promised === null)
      return []
    const midnight = instantAt(`${condition.promised}T00:00`, ground.zone)
    if (midnight === null) return []
    return [{ ms: Date.parse(midnight), for: { kind: 'part', part: condition.part }, waits: true }]
  })
  const slot = slotsForStage(ground.record.slots, stage.id)
    .filter(({ state, to }) => state === 'agreed' && Date.parse(to) > ground.now)
    .toSorted((a, b) => a.from.localeCompare(b.from))[0]
  const slots: readonly Begins[] =
    slot === undefined
      ? []
      : [{ ms: Date.parse(slot.from), for: { kind: 'slot', slot: slot.id }, waits: true }]
  return [...cures, ...parts, ...slots].reduce((last, one) => (one.ms > last.ms ? one : last), now)
}

function activityOf(stage: Stage, notBefore: number, ground: Ground): Activity {
  const calendar = ground.calendar(stage)
  const hours = hoursDrawn(stage, calendar)
  const until = stage.pausedAt === null ? ground.now : Date.parse(stage.pausedAt)
  const spent =
    isBegun(stage) && stage.startedAt !== null
      ? calendar.between(Date.parse(stage.startedAt), until)
      : 0
  return { id: stage.id, hours: Math.max(0, hours - Math.max(0, spent)), calendar, notBefore }
}

function waitsForOf(
  timing: Timing | undefined,
  begins: Begins | undefined,
  record: ProjectRecord,
): WaitsFor {
  const before = record.stages.rows.get(timing?.drivenBy ?? '')
  if (before !== undefined) return { kind: 'stage', stage: before.id }
  return begins?.for ?? { kind: 'nothing' }
}

/** Nobody has said when it will be met. */
const isUndated = (condition: GateCondition): boolean =>
  condition.rule === 'change-order' ||
  condition.rule === 'decision' ||
  (condition.rule === 'part' &&
    condition.is !== 'arrived' &&
    (condition.is !== 'ordered' || condition.promised === null))
