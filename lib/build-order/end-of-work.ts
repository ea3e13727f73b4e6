import type { Context } from '../record/command.ts'
import { type Condition, plain } from '../record/condition.ts'
import type { Assembly } from '../record/entities/things.ts'
import type { Stage } from '../record/entities/work.ts'
import type { Entity } from '../record/entity.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { afterFitting, hostOf } from './fit-effects.ts'
import { ownReleasesVoid } from './own-release.ts'

/** Why work that began then can't have ended at that time: never before its start, never in the future. */
export function endConditions(
  stage: Stage,
  startedAt: Instant | null,
  endedAt: Instant,
  now: Instant,
): Condition[] {
  const wrong = { ...plain(stage.id), rule: 'time', field: 'endedAt' } as const
  if (endedAt > now) return [{ ...wrong, why: 'in the future', limit: now }]
  if (startedAt !== null && endedAt < startedAt)
    return [{ ...wrong, why: 'before the start', limit: startedAt }]
  return []
}

/**
 * A stage whose work ended then, the assemblies that it fitted or took off, and what was released by who now turns out to have
 * done the work. `by`: who did it; null where told by phone.
 */
export function ended(
  record: ProjectRecord,
  stage: Stage,
  endedAt: Instant,
  by: Context['actor']['person'] | null,
): { stage: Stage; assemblies: Assembly[]; voided: Entity[] } {
  const host = hostOf(record, stage)
  const over: Stage = { ...stage, host, state: 'ended', pausedAt: null, endedAt, endedBy: by }
  return {
    stage: over,
    assemblies: afterFitting(record, over),
    voided: ownReleasesVoid(record, stage, by),
  }
}
