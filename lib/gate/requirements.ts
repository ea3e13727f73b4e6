import { plain } from '../record/condition.ts'
import type { Concession, Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { Hidden } from '../record/table.ts'
import { concededBy } from './concessions.ts'
import type { GateRule, Requirement } from './rule.ts'
import { air } from './start/air.ts'
import { changeOrder } from './start/change-order.ts'
import { coating } from './start/coating.ts'
import { custody } from './start/custody.ts'
import { decision } from './start/decision.ts'
import { exclusiveUse } from './start/exclusive-use.ts'
import { mustBeFitted, mustBeOff } from './start/fitted.ts'
import { greatestLag } from './start/greatest-lag.ts'
import { hold } from './start/hold.ts'
import { hotWork } from './start/hot-work.ts'
import { inDate } from './start/in-date.ts'
import { leastLag } from './start/least-lag.ts'
import { milestone } from './start/milestone.ts'
import { part } from './start/part.ts'
import { precautions } from './start/precautions.ts'
import { predecessor } from './start/predecessor.ts'
import { slot } from './start/slot.ts'

/** Every rule of the gate for a start, in the order in which a refusal lists them. */
const rules: readonly GateRule[] = [
  changeOrder,
  decision,
  part,
  predecessor,
  hold,
  leastLag,
  greatestLag,
  coating,
  custody,
  exclusiveUse,
  mustBeFitted,
  mustBeOff,
  hotWork,
  slot,
  milestone,
  inDate,
  air,
  precautions,
]

/** A requirement with the concession that stands on it, if one does. */
export interface Judged extends Requirement {
  readonly concession: Concession | null
}

/** Everything that the gate asks of a stage before it starts, met or not; the roots are not yet followed. */
export const requirementsOf = (record: ProjectRecord, stage: Stage, at: Instant): Judged[] =>
  rules.flatMap((rule) =>
    asked(rule, record, stage, at).map((requirement) => ({
      ...requirement,
      concession: requirement.unmet === null ? null : concededBy(record, stage, requirement.unmet),
    })),
  )

function asked(rule: GateRule, record: ProjectRecord, stage: Stage, at: Instant) {
  try {
    return rule(record, stage, at)
  } catch (error) {
    if (!(error instanceof Hidden)) throw error
    const unknown = { ...plain(error.entity), rule: 'unknown' as const }
    return [{ rule: unknown.rule, entity: error.entity, unmet: unknown }]
  }
}
