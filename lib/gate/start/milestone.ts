import type { Milestone } from '../../record/entities/standing.ts'
import { indexBy } from '../../record/table.ts'
import { type GateRule, met, unmet } from '../rule.ts'

const byStage = indexBy<Milestone>((one) => (one.removedAt === null ? [one.stage] : []))

/** Gate rule 11: a payment that was agreed to come before this stage has been made. Conceded by those who agreed it. */
export const milestone: GateRule = (record, stage) =>
  byStage(record.milestones, stage.id).map((one) =>
    one.metAt !== null
      ? met('milestone', one.id)
      : unmet({
          rule: 'milestone',
          entity: one.id,
          root: one.id,
          since: one.agreedAt,
          concedable: !stage.safety,
          // Only who is paid knows when it has come.
          clearedBy: [one.party],
          clearedWith: { command: 'milestone.meet', input: { milestone: one.id } },
        }),
  )
