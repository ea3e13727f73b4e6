import type { Coat } from '../record/entities/coating.ts'
import type { AssemblyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import { all } from '../record/table.ts'
import { stackOf } from './stack.ts'

/** A layer as it is drawn: its coat, and its µm where the film was read before and after it. */
export interface Layer {
  readonly coat: Coat
  readonly microns: number | null
}

/**
 * The layers of an assembly from metal outwards. How thick one is comes from the mean of the film read over it, less that read under it; a gauge that wasn't set to
 * nought counts for nothing, and where either wasn't read nobody knows.
 */
export function layersOf(record: ProjectRecord, assembly: AssemblyId): Layer[] {
  const stack = stackOf(record, assembly)
  const films = all(record.films).filter((film) => film.assembly === assembly && film.zeroed)
  const over = stack.map((coat, i) => {
    const next = stack[i + 1]
    const read = films.filter(
      ({ at }) => at >= coat.endedAt && (next === undefined || at < next.endedAt),
    )
    return read.length === 0
      ? null
      : read.reduce((sum, { microns }) => sum + microns, 0) / read.length
  })
  return stack.map((coat, i) => {
    const under = i === 0 ? 0 : (over[i - 1] ?? null)
    const whole = over[i] ?? null
    const microns = under === null || whole === null ? null : whole - under
    return { coat, microns: microns === null || microns <= 0 ? null : microns }
  })
}
