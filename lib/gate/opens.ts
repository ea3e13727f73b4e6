import type { Stage } from '../record/entities/work.ts'
import type { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { all } from '../record/table.ts'
import { type Gate, gateOf } from './gate.ts'
import { linksTo } from './indexes.ts'
import { overSince } from './over-since.ts'
import type { GateCondition } from './rule.ts'

/** What would start once something is cleared. */
export interface Opens {
  /** Could start at once. */
  readonly atOnce: readonly StageId[]
  /** Hangs on nothing else, but other steps or time lie between. */
  readonly afterwards: readonly StageId[]
}

/**
 * What would start if that was cleared: a stage signed off, a change order approved, a part inspected, a handover received,
 * a hold point released…
 */
export function whatOpens(record: ProjectRecord, entity: string, at: Instant): Opens {
  const gate = gateOf(record, at)
  const atOnce: StageId[] = []
  const afterwards: StageId[] = []
  for (const stage of all(record.stages)) {
    if (stage.id === entity || !isToStart(stage)) continue
    const unmet = gate.conditions(stage)
    if (unmet.length === 0) continue
    if (
      unmet.every((condition) => isClearedBy(condition, entity)) &&
      !mustCure(record, stage, entity)
    )
      atOnce.push(stage.id)
    else if (unmet.every((condition) => leadsTo(gate, stage, condition, entity)))
      afterwards.push(stage.id)
  }
  return { atOnce, afterwards }
}

const isToStart = (stage: Stage): boolean =>
  stage.removedAt === null && (stage.state === 'planned' || stage.state === 'reopened')

/** Whether that alone clears the condition. Signing a stage off releases no hold point and hands nothing over. */
function isClearedBy(condition: GateCondition, entity: string): boolean {
  switch (condition.rule) {
    case 'predecessor':
    case 'countersign':
    case 'exclusive-use':
      return condition.stage === entity
    case 'custody':
      return condition.handover === entity
    case 'must-be-fitted':
    case 'must-be-off':
      return false
    default:
      return condition.entity === entity
  }
}

/** Cure starts to run only when that stage ends. */
const mustCure = (record: ProjectRecord, stage: Stage, before: string): boolean =>
  linksTo(record.links, stage.id).some((link) => {
    const curing = link.from === before ? record.stages.rows.get(link.from) : undefined
    return curing !== undefined && overSince(curing) === null && link.leastLagHours > 0
  })

const leadsTo = (gate: Gate, stage: Stage, condition: GateCondition, entity: string): boolean =>
  condition.root === entity ||
  isClearedBy(condition, entity) ||
  gate.chain(stage, condition).some((step) => step.stage !== stage.id && step.stage === entity)
