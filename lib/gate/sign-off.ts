import type { Condition, SignOffCondition } from '../record/condition.ts'
import type { Check, Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { isConceded } from './concessions.ts'
import { checksOf } from './indexes.ts'

/** The condition that the work of a stage isn't over. */
export const noEnd = (stage: Stage): SignOffCondition => ({
  rule: 'no-end',
  entity: stage.id,
  root: stage.id,
  since: stage.startedAt,
  concedable: false,
  clearedBy: [stage.party],
  clearedWith: { command: 'stage.end', input: { stage: stage.id } },
  is: stage.state,
})

/** Every check of a stage that isn't passed, conceded or not. A blank is missing, never zero. */
export const unpassedChecks = (record: ProjectRecord, stage: Stage): SignOffCondition[] =>
  checksOf(record.checks, stage.id).flatMap((check) =>
    check.state === 'passed' ? [] : [unpassed(stage, check, check.state)],
  )

const unpassed = (
  stage: Stage,
  check: Check,
  is: 'missing' | 'out of limits',
): SignOffCondition => ({
  rule: 'check',
  entity: check.id,
  root: check.id,
  since: check.at ?? stage.startedAt,
  concedable: !stage.safety,
  clearedBy: [stage.party],
  clearedWith: { command: 'check.record', input: { check: check.id } },
  is,
})

/** The checks that keep a stage from its sign-off: not passed, and not conceded. */
export const checkConditions = (record: ProjectRecord, stage: Stage): Condition[] =>
  unpassedChecks(record, stage).filter((condition) => !isConceded(record, stage, condition))
