import type { Handover, Slot } from '../record/entities/things.ts'
import type { AssemblyId, HandoverId, PartyId } from '../record/ids.ts'
import type { ProjectRecord } from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import { all, must } from '../record/table.ts'

/** A time in which one party answered for the assembly; `from` is null where nobody wrote it down, `to` where it lasts. */
export interface Stay {
  readonly party: PartyId
  readonly from: Instant | null
  readonly to: Instant | null
  /** The handover by which it came; null for the first stay. */
  readonly handover: HandoverId | null
}

/** Where an assembly was and is, what is on its way, and where it is planned to be. */
export interface Itinerary {
  readonly stays: readonly Stay[]
  /** Handovers prepared or released, not yet received. */
  readonly coming: readonly Handover[]
  /** Its slots that are asked or agreed, by their beginning. */
  readonly slots: readonly Slot[]
}

const moved = (handover: Handover) => handover.state === 'received'
const open = (handover: Handover) => handover.state === 'prepared' || handover.state === 'released'

function staysOf(receipts: readonly Handover[], custodian: PartyId, since: Instant): Stay[] {
  const first = receipts[0]
  if (first === undefined) return [{ party: custodian, from: since, to: null, handover: null }]
  const start: Stay = { party: first.from, from: null, to: first.receivedAt, handover: null }
  const later = receipts.map(
    (receipt, index): Stay => ({
      party: receipt.to,
      from: receipt.receivedAt,
      to: receipts[index + 1]?.receivedAt ?? null,
      handover: receipt.id,
    }),
  )
  return [start, ...later]
}

/** The assembly's way through the shops, from its handovers and slots. @throws {NoSuchEntity} */
export function itinerary(record: ProjectRecord, assembly: AssemblyId): Itinerary {
  const { custodian, since } = must(record.assemblies, assembly)
  const handovers = all(record.handovers).filter((one) => one.assemblies.includes(assembly))
  const receipts = handovers
    .filter(moved)
    .toSorted((a, b) => (a.receivedAt ?? '').localeCompare(b.receivedAt ?? ''))
  return {
    stays: staysOf(receipts, custodian, since),
    coming: handovers.filter(open),
    slots: all(record.slots)
      .filter((slot) => slot.assembly === assembly && slot.state !== 'released')
      .toSorted((a, b) => a.from.localeCompare(b.from)),
  }
}
