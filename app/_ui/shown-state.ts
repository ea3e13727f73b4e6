import { gateOf } from '@/lib/gate/gate.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { ProjectRecord } from '@/lib/record/project-record.ts'
import type { Instant } from '@/lib/record/scalars.ts'
import type { ShownState } from '@/lib/words/labels.ts'

/** Held is what a hold, a yes, a decision or a receipt stops; all else that is unmet is waited for. */
const holding: ReadonlySet<string> = new Set(['hold', 'change-order', 'decision'])

/** The state that a card shows: what is stored, and on a planned stage what the gate makes of it now. */
export function shownState(record: ProjectRecord, stage: Stage, at: Instant): ShownState {
  if (stage.state !== 'planned') return stage.state
  const conditions = gateOf(record, at).conditions(stage)
  if (conditions.length === 0) return 'ready'
  return conditions.some(({ rule }) => holding.has(rule)) ? 'held' : 'waiting'
}
