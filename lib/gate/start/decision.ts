import { must } from '../../record/table.ts'
import { type GateRule, met, unmet } from '../rule.ts'

/** Gate rule 6: the decision that it waits on is made. One that was withdrawn is no longer waited for. */
export const decision: GateRule = (record, stage) => {
  if (stage.decision === null) return []
  const asked = must(record.decisions, stage.decision)
  if (asked.state === 'withdrawn') return []
  if (asked.state === 'chosen') return [met('decision', asked.id)]
  return [
    unmet({
      rule: 'decision',
      entity: asked.id,
      root: asked.id,
      since: asked.askedAt,
      concedable: !stage.safety,
      clearedBy: [asked.chooser],
      clearedWith: { command: 'decision.choose', input: { decision: asked.id } },
      is: asked.state,
    }),
  ]
}
