import { leadOf } from '../record/actor.ts'
import type { Rule, StartCondition } from '../record/condition.ts'
import type { Stage } from '../record/entities/work.ts'
import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'

/** What a concession needs before it counts: the yes of a party, or a document. */
type Needs = 'its party' | 'the lead' | 'who is paid' | 'the data sheet'

const NOBODY: readonly Needs[] = []
const BOTH: readonly Needs[] = ['its party', 'the lead']
const BY_SHEET: readonly Needs[] = [...BOTH, 'the data sheet']

/**
 * Who may concede a condition, rule by rule. Safety work (brakes, steering, restraints, structure, fuel) nobody may, whatever stands here; the owner
 * reads of each concession in the journal and on its stage.
 */
const needs: { readonly [R in StartCondition['rule'] | 'check']: readonly Needs[] } = {
  predecessor: BOTH,
  countersign: BOTH,
  'least-lag': BOTH,
  'greatest-lag': BY_SHEET,
  custody: NOBODY,
  'exclusive-use': NOBODY,
  'must-be-fitted': BOTH,
  'must-be-off': BOTH,
  part: BOTH,
  'change-order': NOBODY,
  decision: BOTH,
  // A witness point: a hold point waits for the party named.
  hold: BOTH,
  slot: BOTH,
  air: BOTH,
  'in-date': NOBODY,
  precautions: NOBODY,
  milestone: ['its party', 'the lead', 'who is paid'],
  'coat-over': BY_SHEET,
  'sanded-through': BY_SHEET,
  'bare-metal': BY_SHEET,
  'lacquer-cure': BY_SHEET,
  'film-left': BY_SHEET,
  check: BOTH,
}
const byRule: ReadonlyMap<string, readonly Needs[]> = new Map(Object.entries(needs))

/** Whether anybody may ever concede a condition of that rule. */
export const isEverConceded = (rule: Rule): boolean => (byRule.get(rule) ?? NOBODY).length > 0

/** Whether a concession of that rule stands on a document of the maker's data sheet. */
export const needsSheet = (rule: string): boolean =>
  (byRule.get(rule) ?? NOBODY).includes('the data sheet')

/** The parties that must agree to a concession of that rule about that entity on a stage. */
export function whoConcedes(
  record: ProjectRecord,
  stage: Stage,
  about: { readonly rule: string; readonly entity: string },
): PartyId[] {
  const lead = leadOf(record)
  const party = (need: Needs): PartyId | undefined => {
    switch (need) {
      case 'its party':
        return stage.party
      case 'the lead':
        return lead?.id
      case 'who is paid':
        return record.milestones.rows.get(about.entity)?.party
      case 'the data sheet':
        return undefined
    }
  }
  const said = byRule.get(about.rule) ?? NOBODY
  // What nobody may concede is refused to both with the condition, not as somebody else's business.
  return [...new Set((said.length === 0 ? BOTH : said).flatMap((need) => party(need) ?? []))]
}
