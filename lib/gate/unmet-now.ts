import type { Condition } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { Hidden } from '../record/table.ts'
import { checkConditions } from './sign-off.ts'
import { startConditions } from './start.ts'

/**
 * Every condition that keeps a stage from its next step and isn't conceded: those of its start while it is to start, go on
 * or be confirmed, and its checks until it is signed off. These can be conceded or asked for.
 */
export function unmetNow(record: ProjectRecord, stage: Stage, at: Instant): Condition[] {
  if (stage.state === 'signed off') return []
  const atWork = stage.state === 'in work' || stage.state === 'ended'
  const start = atWork ? [] : startConditions(record, stage, at)
  return [...start, ...checkConditions(record, stage)]
}

/**
 * Those of a rule about one thing; several where several signatures are missing. Empty where it is met or conceded.
 * @throws {Hidden} where the view may not see whether it is met.
 */
export function unmetAbout(
  record: ProjectRecord,
  stage: Stage,
  about: { readonly rule: string; readonly entity: string },
  at: Instant,
): Condition[] {
  const unmet = unmetNow(record, stage, at).filter(({ entity }) => entity === about.entity)
  if (unmet.some(({ rule }) => rule === 'unknown')) throw new Hidden(about.entity)
  return unmet.filter(({ rule }) => rule === about.rule)
}
