import type { Rule } from '../record/condition.ts'
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

/** Rules that were met as the work began, and that its own work changes: windows, and what it lays over what. */
const ofTheBeginning: ReadonlySet<Rule> = new Set<Rule>([
  'greatest-lag',
  'coat-over',
  'sanded-through',
  'bare-metal',
  'lacquer-cure',
  'film-left',
])

/**
 * Every condition that keeps a paused stage from going on: those of its start, but for the recoat window and what lies under its coat, which it made in
 * time when it began.
 */
export const resumeConditions = (
  record: ProjectRecord,
  stage: Stage,
  at: Instant,
): readonly GateCondition[] =>
  startConditions(record, stage, at).filter(({ rule }) => !ofTheBeginning.has(rule))
