import { stageStatus } from '../gate/status.ts'
import type { Shop } from '../record/entities/people.ts'
import type { Stage } from '../record/entities/work.ts'
import type { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { layOut } from './lay-out.ts'

const HOUR_MS = 3_600_000

/** What a change of the build order would do, before it is done. */
export interface Effect {
  /** Could start once it is done, and can't now. */
  readonly opened: readonly StageId[]
  /** Could start now, and couldn't any more. */
  readonly shut: readonly StageId[]
  /** When the last of it ends, as the build order stands; null where nothing is left to do. */
  readonly endBefore: Instant | null
  readonly endAfter: Instant | null
  /** Stages to come that begin at another time, by how many hours of the clock, later is plus; the most moved first. */
  readonly moved: readonly { readonly stage: StageId; readonly hours: number }[]
}

/** Compares a record with what a change would make of it, at one time; `shops` for their working hours. */
export function effectOf(
  before: ProjectRecord,
  after: ProjectRecord,
  shops: readonly Shop[],
  now: Instant,
): Effect {
  const [laidBefore, laidAfter] = [layOut(before, shops, now), layOut(after, shops, now)]
  const ready = (record: ProjectRecord, stage: Stage | undefined): boolean =>
    stage !== undefined && stage.removedAt === null && stageStatus(record, stage, now) === 'ready'
  const both = all(after.stages).filter(({ id }) => before.stages.rows.has(id))
  const changed = both.map((stage) => ({
    id: stage.id,
    was: ready(before, before.stages.rows.get(stage.id)),
    is: ready(after, stage),
  }))
  const moved = both.flatMap((stage) => {
    const [was, is] = [laidBefore.stages.get(stage.id), laidAfter.stages.get(stage.id)]
    if (was?.tense !== 'to come' || is?.tense !== 'to come') return []
    const hours = (Date.parse(is.from) - Date.parse(was.from)) / HOUR_MS
    return Math.abs(hours) < 1 ? [] : [{ stage: stage.id, hours }]
  })
  return {
    opened: changed.flatMap(({ id, was, is }) => (is && !was ? [id] : [])),
    shut: changed.flatMap(({ id, was, is }) => (was && !is ? [id] : [])),
    endBefore: laidBefore.end,
    endAfter: laidAfter.end,
    moved: moved.toSorted((a, b) => Math.abs(b.hours) - Math.abs(a.hours)),
  }
}
