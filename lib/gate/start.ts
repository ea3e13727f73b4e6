import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { gateOf } from './gate.ts'
import type { GateCondition } from './rule.ts'

/** Every condition that keeps `stage` from starting at that time, with its root; empty when it may start. */
export const startConditions = (
  record: ProjectRecord,
  stage: Stage,
  at: Instant,
): readonly GateCondition[] => gateOf(record, at).conditions(stage)

/**
 * Every condition that keeps a paused stage from going on: those of its start, but for the recoat window, which it made in
 * time when it began.
 */
export const resumeConditions = (
  record: ProjectRecord,
  stage: Stage,
  at: Instant,
): readonly GateCondition[] =>
  startConditions(record, stage, at).filter((condition) => condition.rule !== 'greatest-lag')
