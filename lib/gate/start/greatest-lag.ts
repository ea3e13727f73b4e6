import { must } from '../../record/table.ts'
import { hoursAfter } from '../hours-after.ts'
import { linksTo } from '../indexes.ts'
import { overSince } from '../over-since.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 2: no recoat window has run out, counted from the recorded end of work; the last moment still counts.
 * What clears it is keying work, as a stage of its own. Only a data sheet could concede it, so a bare reason never does.
 */
export const greatestLag: GateRule = (record, stage, at) =>
  linksTo(record.links, stage.id).flatMap((link) => {
    if (link.greatestLagHours === null) return []
    const before = must(record.stages, link.from)
    const end = overSince(before)
    if (before.removedAt !== null || end === null) return []
    const ranOutAt = hoursAfter(end, link.greatestLagHours)
    if (at <= ranOutAt) return met('greatest-lag', link.id)
    return unmet({
      rule: 'greatest-lag',
      entity: link.id,
      root: link.id,
      since: ranOutAt,
      concedable: false,
      clearedBy: [stage.party],
      clearedWith: {
        command: 'stage.add',
        input: { party: stage.party, assemblies: stage.assemblies },
      },
      stage: before.id,
      ranOutAt,
    })
  })
