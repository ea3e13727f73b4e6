import { endOfLastCoat } from '../coating/stack.ts'
import type { Stage } from '../record/entities/work.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { overSince } from './over-since.ts'

/**
 * From when the lags of a stage count, if its work is over: from the end of the last coat that it laid, else from the end of its work; never from
 * a signature. Masking off afterwards neither stretches a window nor restarts a cure.
 */
export function lagsFrom(record: ProjectRecord, stage: Stage): Instant | null {
  const over = overSince(stage)
  return over === null ? null : (endOfLastCoat(record.coats, stage.id) ?? over)
}
