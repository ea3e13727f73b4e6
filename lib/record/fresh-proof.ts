import type { Actor } from './actor.ts'
import { type Condition, plain } from './condition.ts'
import type { Instant } from './scalars.ts'

/** How long a proof of who somebody is counts for a yes (DESIGN §6). */
export const PROOF_FRESH_MINUTES = 10

/** Why somebody must prove anew who they are before a yes on `entity`; empty while their proof is fresh. */
export function proofConditions(entity: string, actor: Actor, now: Instant): Condition[] {
  const { proof, provedAt, party } = actor
  const age = provedAt === null ? Number.POSITIVE_INFINITY : Date.parse(now) - Date.parse(provedAt)
  if (proof !== null && age <= PROOF_FRESH_MINUTES * 60_000) return []
  return [
    {
      ...plain(entity),
      rule: 'proof',
      minutes: PROOF_FRESH_MINUTES,
      since: provedAt,
      clearedBy: party === null ? [] : [party],
    },
  ]
}
