import { linksFrom } from '../gate/indexes.ts'
import { startConditions } from '../gate/start.ts'
import { type Condition, wrongState } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import type { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { must } from '../record/table.ts'

/** The stages that wait for that one directly. */
const followers = (record: ProjectRecord, stage: StageId): Stage[] =>
  linksFrom(record.links, stage)
    .map((link) => must(record.stages, link.to))
    .filter((after) => after.removedAt === null)

/** What relied on a stage and has begun: a press on that stage can no longer be taken back, only reopened. */
export const startedFollowers = (record: ProjectRecord, stage: Stage): Condition[] =>
  followers(record, stage.id)
    .filter((after) => after.state !== 'planned' && after.state !== 'reopened')
    .map((after) => ({
      ...wrongState(after.id, after.state, 'planned'),
      since: after.startedAt,
      clearedBy: [stage.party],
      clearedWith: { command: 'stage.reopen', input: { stage: stage.id } },
    }))

/**
 * Everything signed off that relied on those stages, through every link downstream, now in doubt for that reason.
 * The stages themselves are left out.
 */
export function inDoubtAfter(
  record: ProjectRecord,
  stages: readonly StageId[],
  doubt: string,
): Stage[] {
  const reached = new Set(stages)
  // A set goes on to what is added while it is walked.
  for (const stage of reached) for (const after of followers(record, stage)) reached.add(after.id)
  return [...reached]
    .filter((id) => !stages.includes(id))
    .map((id) => must(record.stages, id))
    .filter((stage) => stage.state === 'signed off')
    .map((stage) => ({ ...stage, state: 'in doubt', doubt }))
}

/**
 * Why a stage that is signed off now stands in doubt at once: something it relies on is reopened or in doubt, and that isn't
 * conceded. Null where it stands.
 */
export function doubtOf(record: ProjectRecord, stage: Stage, at: Instant): string | null {
  const doubted = startConditions(record, stage, at).find(
    (unmet) => unmet.rule === 'predecessor' && (unmet.is === 'reopened' || unmet.is === 'in doubt'),
  )
  if (doubted === undefined) return null
  const before = must(record.stages, doubted.entity)
  return before.doubt ?? before.name
}
