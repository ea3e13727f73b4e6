import type { Actor } from '@/lib/record/actor.ts'
import type { Reader } from '@/lib/words/reader.ts'

/** The reader as the rules see who presses. How they proved who they are is known to the server alone. */
export const actorOf = (reader: Reader): Actor => ({
  person: reader.person,
  role: reader.view.role,
  party: reader.view.party,
  shop: null,
  proof: null,
  provedAt: null,
})
