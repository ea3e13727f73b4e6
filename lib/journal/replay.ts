import type { ProjectId, ShopId } from '../record/ids.ts'
import { withLaterFields } from '../record/later-fields.ts'
import {
  emptyProjectRecord,
  emptyShopRecord,
  type ProjectRecord,
  projectAfter,
  type ShopRecord,
  shopAfter,
} from '../record/project-record.ts'
import type { Instant } from '../record/scalars.ts'
import type { JournalEntry } from './journal-entry.ts'
import { joinParts } from './parts.ts'

/** A project's record, made again from its journal: with the parts that this reader has. */
export const replayProject = (id: ProjectId, entries: readonly JournalEntry[]): ProjectRecord =>
  entries.reduce((record, entry) => projectAfter(record, stepOf(entry)), emptyProjectRecord(id))

/** A shop book, made again from its journal. */
export const replayShop = (id: ShopId, entries: readonly JournalEntry[]): ShopRecord =>
  entries.reduce((record, entry) => shopAfter(record, stepOf(entry)), emptyShopRecord(id))

/** The entries up to and with that moment: replay them for the record as it stood then. */
export function upTo(entries: readonly JournalEntry[], moment: Instant): readonly JournalEntry[] {
  const after = entries.findIndex(({ at }) => at > moment)
  return after === -1 ? entries : entries.slice(0, after)
}

const stepOf = (entry: JournalEntry) => ({
  version: entry.sequence,
  entities: joinParts(entry.parts).entities.map(withLaterFields),
})
