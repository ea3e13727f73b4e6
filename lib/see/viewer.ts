import { leadOf, ownerOf, type View } from '../record/actor.ts'
import type { PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'

/** A view with what the record says of its party: who may see a scope hangs on nothing else. */
export interface Viewer {
  readonly view: View
  readonly record: ProjectRecord
  /** Business of a party, or the project's own (null): its titles and states, not its prices. */
  readonly business: (whose: PartyId | null) => boolean
  /** Prices of a party, or the project's own (null). */
  readonly money: (whose: PartyId | null) => boolean
  /** What a party keeps to itself. */
  readonly private: (whose: PartyId | null) => boolean
  /** What a party's managers keep to themselves. */
  readonly managers: (whose: PartyId | null) => boolean
}

/** What `view` may see in `record`, whichever entity it is about. */
export function viewerOf(view: View, record: ProjectRecord): Viewer {
  const { party, role } = view
  const isLead = leadOf(record)?.id === party
  const isOwner = ownerOf(record)?.id === party
  const outside = role === 'observer' || role === 'supplier' || role === 'guest'
  const billsTo = (whose: PartyId): 'owner' | 'lead' | undefined =>
    record.parties.rows.get(whose)?.bills
  const paysFor = (whose: PartyId): boolean =>
    billsTo(whose) === 'lead' ? isLead : billsTo(whose) === 'owner' && isOwner
  const known = record.parties.rows.has(party)
  return {
    view,
    record,
    business: (whose) =>
      known &&
      !outside &&
      (whose === null
        ? isLead || isOwner
        : whose === party || isLead || (isOwner && billsTo(whose) === 'owner')),
    money: (whose) =>
      known &&
      !outside &&
      role !== 'hand' &&
      (whose === null ? isLead || isOwner : whose === party || paysFor(whose)),
    private: (whose) => known && !outside && whose === party,
    managers: (whose) => known && !outside && role !== 'hand' && whose === party,
  }
}
