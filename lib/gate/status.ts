import type { Rule } from '../record/condition.ts'
import type { Concession, Stage, StageState } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { gateOf } from './gate.ts'
import { overSince } from './over-since.ts'
import type { Judged } from './requirements.ts'
import type { GateCondition } from './rule.ts'

/**
 * How a stage stands. A planned one is *ready*, *waiting* (for time or ordinary work) or *held* (by a hold, a yes, a
 * decision or a receipt).
 */
export type StageStatus = Exclude<StageState, 'planned'> | 'ready' | 'waiting' | 'held'

/** One thing that the gate asks of a stage, for its card. `condition` is there unless it is met. */
export interface GateItem {
  readonly rule: Rule
  readonly entity: string
  readonly is: 'met' | 'conceded' | 'unmet' | 'unknown'
  readonly condition: GateCondition | null
  readonly concession: Concession | null
}

/** How a stage stands, with everything its start asks for: `items` are "5 of 9 met", `conditions` those still unmet. */
export interface StageGate {
  readonly status: StageStatus
  readonly items: readonly GateItem[]
  readonly conditions: readonly GateCondition[]
}

/** How a stage stands at that time and what the gate asks of it; nothing is asked any more of work that has begun. */
export function stageGate(record: ProjectRecord, stage: Stage, at: Instant): StageGate {
  const toPass = stage.state === 'planned' || stage.state === 'reopened' || stage.state === 'paused'
  if (!toPass) return { status: stage.state, items: [], conditions: [] }
  const gate = gateOf(record, at)
  const conditions = gate.conditions(stage)
  const status = stage.state === 'planned' ? readiness(record, conditions) : stage.state
  return { status, items: gate.requirements(stage).map(toItem), conditions }
}

/** How a stage stands at that time. */
export const stageStatus = (record: ProjectRecord, stage: Stage, at: Instant): StageStatus =>
  stage.state === 'planned' ? readiness(record, gateOf(record, at).conditions(stage)) : stage.state

function toItem({ rule, entity, unmet, concession }: Judged): GateItem {
  const is =
    unmet === null
      ? 'met'
      : concession !== null
        ? 'conceded'
        : unmet.rule === 'unknown'
          ? 'unknown'
          : 'unmet'
  return { rule, entity, is, condition: unmet, concession }
}

function readiness(
  record: ProjectRecord,
  conditions: readonly GateCondition[],
): 'ready' | 'waiting' | 'held' {
  if (conditions.length === 0) return 'ready'
  return conditions.some((condition) => isHeldBy(record, condition)) ? 'held' : 'waiting'
}

/** Somebody's word is wanted now, not work or time: a hold whose work still goes on is ordinary waiting. */
function isHeldBy(record: ProjectRecord, condition: GateCondition): boolean {
  switch (condition.rule) {
    case 'change-order':
    case 'decision':
      return true
    case 'hold': {
      const before = record.stages.rows.get(condition.stage)
      return before !== undefined && overSince(before) !== null
    }
    case 'custody':
      return (
        condition.handover !== null &&
        record.handovers.rows.get(condition.handover)?.state === 'released'
      )
    default:
      return false
  }
}
