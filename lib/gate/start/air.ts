import type { AirReading } from '../../record/entities/evidence.ts'
import type { Stage } from '../../record/entities/work.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import type { Instant } from '../../record/scalars.ts'
import { indexBy } from '../../record/table.ts'
import { dewMargin, LEAST_MARGIN } from '../../sums/dew-margin.ts'
import { type GateRule, met, unmet } from '../rule.ts'

const MINUTE_MS = 60_000
const byStage = indexBy<AirReading>((reading) => [reading.stage])

/** The latest reading of air and surface at a stage; undefined where there is none. */
export const lastAir = (record: ProjectRecord, stage: string): AirReading | undefined =>
  byStage(record.airReadings, stage)
    .toSorted((a, b) => (a.takenAt < b.takenAt ? -1 : a.takenAt > b.takenAt ? 1 : 0))
    .at(-1)

/** What is amiss with a reading for that stage: decided on full precision, limits included. Null where it may be sprayed. */
export function airAmiss(
  stage: Stage,
  { air, surface, humidity, takenAt }: AirReading,
  at: Instant,
): 'stale' | 'too damp' | 'too cold' | 'too warm' | 'near dew point' | null {
  const age = Date.parse(at) - Date.parse(takenAt)
  if (stage.airAgeMost !== null && age > stage.airAgeMost * MINUTE_MS) return 'stale'
  if (!dewMargin(air, humidity, surface, stage.dewMarginLeast ?? LEAST_MARGIN).passes)
    return 'near dew point'
  if (stage.humidityMost !== null && humidity > stage.humidityMost) return 'too damp'
  if (stage.surfaceLeast !== null && surface < stage.surfaceLeast) return 'too cold'
  if (stage.surfaceMost !== null && surface > stage.surfaceMost) return 'too warm'
  return null
}

/**
 * Gate rule 8: where it is asked, air, surface and humidity are read at the work, fresh enough, and the surface stands far enough above the dew
 * point (ISO 8502-4 guidance; 3 °C and the sheet's limits).
 */
export const air: GateRule = (record, stage, at) => {
  if (stage.airAgeMost === null) return []
  const last = lastAir(record, stage.id)
  const is = last === undefined ? 'missing' : airAmiss(stage, last, at)
  if (is === null) return [met('air', stage.id)]
  const margin = last === undefined ? null : dewMargin(last.air, last.humidity, last.surface).margin
  return [
    unmet({
      rule: 'air',
      entity: stage.id,
      root: stage.id,
      since: last?.takenAt ?? null,
      concedable: !stage.safety && is !== 'missing' && is !== 'stale',
      clearedBy: [stage.party],
      clearedWith: { command: 'air.record', input: { stage: stage.id } },
      is,
      margin,
    }),
  ]
}
