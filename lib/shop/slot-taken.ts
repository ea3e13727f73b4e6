import { type Condition, plain } from '../record/condition.ts'
import type { Slot } from '../record/entities/things.ts'
import type { AssemblyId, BayId, SlotId } from '../record/ids.ts'
import type { ProjectRecord, ShopRecord } from '../record/project-record.ts'
import { all } from '../record/table.ts'
import { overlap, type Span } from './span.ts'

interface Wanted extends Span {
  readonly bay: BayId
  readonly assembly: AssemblyId
  /** The slot itself, where it exists already. */
  readonly slot?: SlotId
}

const inTheWay = (wanted: Wanted) => (slot: Slot) =>
  slot.state === 'agreed' && slot.id !== wanted.slot && overlap(slot, wanted)

/** A slot of this project names itself and who gives it up; another project's is only ever busy. */
function taken(
  record: ProjectRecord,
  slot: Slot,
  what: 'bay' | 'assembly',
  wanted: Wanted,
): Condition {
  const span = { rule: 'slot-taken', what, bay: slot.bay, from: slot.from, to: slot.to } as const
  if (slot.project !== record.id) return { ...plain(wanted.bay), ...span, by: null }
  return {
    ...plain(slot.id),
    ...span,
    since: slot.agreedAt,
    by: slot.party,
    clearedBy: [slot.party],
    clearedWith: { command: 'slot.release', input: { slot: slot.id } },
  }
}

/**
 * Every agreed slot that keeps `wanted` from being agreed: of the same bay in the diary of its shop, over all projects,
 * and of the same assembly in any bay.
 */
export function slotTaken(record: ProjectRecord, diary: ShopRecord, wanted: Wanted): Condition[] {
  const bay = all(diary.slots)
    .filter((slot) => slot.bay === wanted.bay)
    .filter(inTheWay(wanted))
  const assembly = all(record.slots)
    .filter((slot) => slot.assembly === wanted.assembly && slot.bay !== wanted.bay)
    .filter(inTheWay(wanted))
  return [
    ...bay.map((slot) => taken(record, slot, 'bay', wanted)),
    ...assembly.map((slot) => taken(record, slot, 'assembly', wanted)),
  ]
}
