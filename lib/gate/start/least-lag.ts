import { must } from '../../record/table.ts'
import { hoursAfter } from '../hours-after.ts'
import { linksTo } from '../indexes.ts'
import { lagsFrom } from '../lags-from.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 1: cure time has run, by the clock, from the recorded end of work. A late signature neither stretches nor restarts it.
 * Never conceded where either stage is safety-relevant.
 */
export const leastLag: GateRule = (record, stage, at) =>
  linksTo(record.links, stage.id).flatMap((link) => {
    if (link.leastLagHours === 0) return []
    const before = must(record.stages, link.from)
    const end = lagsFrom(record, before)
    if (before.removedAt !== null || end === null) return []
    const until = hoursAfter(end, link.leastLagHours)
    if (at >= until) return met('least-lag', link.id)
    return unmet({
      rule: 'least-lag',
      entity: link.id,
      root: link.id,
      since: end,
      concedable: !stage.safety && !before.safety && !link.safety,
      clearedBy: [],
      clearedWith: null,
      stage: before.id,
      until,
    })
  })
