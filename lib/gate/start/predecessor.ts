import type { Stage } from '../../record/entities/work.ts'
import type { PartyId } from '../../record/ids.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { must } from '../../record/table.ts'
import { linksTo, signOffsOf } from '../indexes.ts'
import { nextPress } from '../next-press.ts'
import { type GateRule, met, type Requirement, unmet } from '../rule.ts'

/**
 * Gate rule 1: every stage it depends on is signed off and has every countersign asked for.
 * Never conceded where either stage is safety-relevant.
 */
export const predecessor: GateRule = (record, stage) =>
  linksTo(record.links, stage.id).flatMap((link) => {
    const before = must(record.stages, link.from)
    if (before.removedAt !== null) return []
    if (before.state === 'signed off') {
      return [met('predecessor', before.id), ...countersigns(record, stage, before)]
    }
    return unmet({
      rule: 'predecessor',
      entity: before.id,
      root: before.id,
      since: before.endedAt ?? before.startedAt,
      concedable: mayConcede(stage, before),
      clearedBy: [before.party],
      clearedWith: nextPress(before),
      stage: before.id,
      is: before.state,
    })
  })

function countersigns(record: ProjectRecord, stage: Stage, before: Stage): Requirement[] {
  return before.countersigns.map((party) =>
    isCountersigned(record, before, party)
      ? met('countersign', before.id)
      : unmet({
          rule: 'countersign',
          entity: before.id,
          root: before.id,
          since: before.signedOffAt,
          concedable: mayConcede(stage, before),
          clearedBy: [party],
          clearedWith: { command: 'stage.countersign', input: { stage: before.id, for: party } },
          stage: before.id,
          party,
        }),
  )
}

/** Whether the countersign asked of `party` stands on that stage. */
export const isCountersigned = (record: ProjectRecord, stage: Stage, party: PartyId): boolean =>
  signOffsOf(record.signOffs, stage.id).some(
    (sign) => sign.type === 'countersign' && sign.party === party,
  )

const mayConcede = (stage: Stage, before: Stage): boolean => !stage.safety && !before.safety
