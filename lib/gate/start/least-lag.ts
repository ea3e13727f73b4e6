import { must } from '../../record/table.ts'
import { cureEnds } from '../cure-ends.ts'
import { linksTo, metalReadingsOf } from '../indexes.ts'
import { lagsFrom } from '../lags-from.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/**
 * Gate rule 1: cure time has run, from the recorded end of work: at least by the clock, and longer where the metal was logged as cold. A late signature neither stretches nor restarts it.
 * Never conceded where either stage is safety-relevant.
 */
export const leastLag: GateRule = (record, stage, at) =>
  linksTo(record.links, stage.id).flatMap((link) => {
    if (link.leastLagHours === 0) return []
    const before = must(record.stages, link.from)
    const end = lagsFrom(record, before)
    if (before.removedAt !== null || end === null) return []
    const log = metalReadingsOf(record.metalReadings, before.id).filter(
      (reading) => reading.takenAt <= at,
    )
    const { until, metal } = cureEnds(end, link.leastLagHours, link.curesAt, log)
    if (until !== null && at >= until) return met('least-lag', link.id)
    return unmet({
      rule: 'least-lag',
      entity: link.id,
      root: link.id,
      since: end,
      concedable: !stage.safety && !before.safety && !link.safety,
      // Cold metal is somebody's to warm, and to read again.
      clearedBy: until === null ? [stage.party] : [],
      clearedWith: until === null ? { command: 'metal.record', input: { stage: before.id } } : null,
      stage: before.id,
      until,
      metal,
    })
  })
