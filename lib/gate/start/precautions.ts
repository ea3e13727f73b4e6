import { type GateRule, met, unmet } from '../rule.ts'

/** Gate rule 10: a stage with a hazard starts once its precautions are ticked as being in place. Never conceded. */
export const precautions: GateRule = (_, stage) => {
  if (stage.hazards.length === 0) return []
  if (stage.precautionsAt !== null) return [met('precautions', stage.id)]
  return [
    unmet({
      rule: 'precautions',
      entity: stage.id,
      root: stage.id,
      since: null,
      concedable: false,
      clearedBy: [stage.party],
      clearedWith: { command: 'stage.precautions', input: { stage: stage.id } },
      hazards: stage.hazards,
    }),
  ]
}
