import type { Clearing } from '../../record/condition.ts'
import type { Stage } from '../../record/entities/work.ts'
import type { AssemblyId, PartyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { must } from '../../record/table.ts'
import { stagesFitting, stagesTakingOff } from '../indexes.ts'
import { nextPress } from '../next-press.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/** Gate rule 4: what must be fitted is fitted. */
export const mustBeFitted: GateRule = (record, stage) =>
  stage.needsFitted.map((id) => {
    const assembly = must(record.assemblies, id)
    if (assembly.host !== null) return met('must-be-fitted', id)
    return unmet({
      rule: 'must-be-fitted',
      entity: id,
      root: id,
      since: null,
      concedable: !stage.safety,
      ...cleared(record, id, stageThatFits(record, id), 'assembly.fit'),
      assembly: id,
    })
  })

/** Gate rule 4: what must be off is off. */
export const mustBeOff: GateRule = (record, stage) =>
  stage.needsOff.map((id) => {
    const assembly = must(record.assemblies, id)
    if (assembly.host === null) return met('must-be-off', id)
    return unmet({
      rule: 'must-be-off',
      entity: id,
      root: id,
      since: null,
      concedable: !stage.safety,
      ...clearedOff(record, id),
      assembly: id,
    })
  })

const isToCome = (stage: Stage): boolean =>
  stage.state === 'planned' ||
  stage.state === 'in work' ||
  stage.state === 'paused' ||
  stage.state === 'reopened'

/** The stage still to come that fits an assembly. */
export const stageThatFits = (record: ProjectRecord, id: AssemblyId): Stage | undefined =>
  stagesFitting(record.stages, id).find(isToCome)

/** The stage still to come that takes an assembly off. */
export const stageThatTakesOff = (record: ProjectRecord, id: AssemblyId): Stage | undefined =>
  stagesTakingOff(record.stages, id).find(isToCome)

function cleared(
  record: ProjectRecord,
  assembly: AssemblyId,
  by: Stage | undefined,
  command: 'assembly.fit' | 'assembly.takeOff',
): { clearedBy: PartyId[]; clearedWith: Clearing | null } {
  if (by !== undefined) return { clearedBy: [by.party], clearedWith: nextPress(by) }
  return {
    clearedBy: [must(record.assemblies, assembly).custodian],
    clearedWith: { command, input: { assembly } },
  }
}

/** Who takes an assembly off, and with what press: the stage to come that does, else its custodian. */
export const clearedOff = (record: ProjectRecord, id: AssemblyId) =>
  cleared(record, id, stageThatTakesOff(record, id), 'assembly.takeOff')
