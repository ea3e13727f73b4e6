import type { Stage } from '../record/entities/work.ts'
import type { Instant } from '../record/scalars.ts'

/** When the work of a stage ended, if it is over; lags run from then, never from a signature. Null while it goes on. */
export const overSince = (stage: Stage): Instant | null =>
  stage.state === 'ended' || stage.state === 'signed off' || stage.state === 'in doubt'
    ? stage.endedAt
    : null
