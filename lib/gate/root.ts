import type { Stage } from '../record/entities/work.ts'
import type { StageId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { linksTo, openHandoversOf, stagesOn } from './indexes.ts'
import { overSince } from './over-since.ts'
import type { GateCondition } from './rule.ts'
import { stageThatFits, stageThatTakesOff } from './start/fitted.ts'

/** Where the cause of a condition lies: in another stage, whose own causes go further up, or in the thing named. */
export type Behind = { readonly stage: StageId } | { readonly entity: string }

/** What stands directly behind an unmet condition of `stage`. */
export function behind(record: ProjectRecord, stage: Stage, condition: GateCondition): Behind {
  switch (condition.rule) {
    case 'predecessor':
      return { stage: condition.stage }
    case 'hold': {
      const before = record.stages.rows.get(condition.stage)
      const atWork = before !== undefined && overSince(before) === null
      return atWork ? { stage: condition.stage } : { entity: condition.entity }
    }
    case 'custody':
      return behindCustody(record, stage, condition.entity)
    case 'must-be-fitted':
      return stageOr(condition.entity, stageThatFits(record, condition.assembly))
    case 'must-be-off':
      return stageOr(condition.entity, stageThatTakesOff(record, condition.assembly))
    case 'part':
      return { entity: orderBehindPart(record, condition.entity) ?? condition.entity }
    case 'exclusive-use':
      return { entity: condition.stage }
    case 'slot':
      return { entity: condition.root }
    default:
      return { entity: condition.entity }
  }
}

const stageOr = (entity: string, stage: Stage | undefined): Behind =>
  stage === undefined ? { entity } : { stage: stage.id }

/** A handover under way, else what the custodian still has to do to it, else the assembly itself. */
function behindCustody(record: ProjectRecord, stage: Stage, assembly: string): Behind {
  const handover = openHandoversOf(record.handovers, assembly).find(
    (open) => open.to === stage.party,
  )
  if (handover !== undefined) return { entity: handover.id }
  const custodian = record.assemblies.rows.get(assembly)?.custodian
  const theirs = stagesOn(record.stages, assembly).filter(
    (other) => other.id !== stage.id && other.party === custodian && isUnfinished(other),
  )
  const last = theirs.find((other) => other.handoverTo === stage.party)
  const before = theirs.find((other) =>
    linksTo(record.links, stage.id).some((link) => link.from === other.id),
  )
  return stageOr(assembly, last ?? before)
}

const isUnfinished = (stage: Stage): boolean => stage.state !== 'signed off'

/** A part not yet made is behind a yes, where one of its stages was brought by a change order that has none. */
function orderBehindPart(record: ProjectRecord, id: string): string | null {
  const part = record.parts.rows.get(id)
  if (part === undefined || (part.state !== 'wanted' && part.state !== 'ordered')) return null
  const orders = part.stages.flatMap((stage) => record.stages.rows.get(stage)?.changeOrder ?? [])
  // An order that this view may not see is not named as a cause: it may have its yes.
  return (
    orders.find((order) => {
      const state = record.changeOrders.rows.get(order)?.state
      return state === 'draft' || state === 'sent'
    }) ?? null
  )
}
