import { must } from '../../record/table.ts'
import { hoursAfter } from '../hours-after.ts'
import { linksTo } from '../indexes.ts'
import { lagsFrom } from '../lags-from.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 2: no recoat window has run out, counted from the recorded end of work; the last moment still counts.
 * What clears it is keying work, as a stage of its own, put in with its links by one press. It is conceded with the data sheet, never by a bare reason.
 */
export const greatestLag: GateRule = (record, stage, at) =>
  linksTo(record.links, stage.id).flatMap((link) => {
    if (link.greatestLagHours === null) return []
    const before = must(record.stages, link.from)
    const end = lagsFrom(record, before)
    if (before.removedAt !== null || end === null) return []
    const ranOutAt = hoursAfter(end, link.greatestLagHours)
    if (at <= ranOutAt) return met('greatest-lag', link.id)
    return unmet({
      rule: 'greatest-lag',
      entity: link.id,
      root: link.id,
      since: ranOutAt,
      concedable: !stage.safety && !before.safety && !link.safety,
      clearedBy: [stage.party],
      clearedWith: { command: 'stage.insertKeying', input: { link: link.id } },
      stage: before.id,
      ranOutAt,
    })
  })
