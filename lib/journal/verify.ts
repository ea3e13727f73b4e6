import type { Sha256 } from '../record/scalars.ts'
import { hashOfEntry } from './entry.ts'
import { BEFORE_FIRST, type JournalEntry, type Part } from './journal-entry.ts'
import { hashOfPart } from './parts.ts'

/** What a journal’s check came to; `head` is the hash of its last entry. */
export type Verified =
  | { readonly holds: true; readonly head: Sha256; readonly missingParts: number }
  | { readonly holds: false; readonly sequence: number; readonly why: string }

/**
 * Tells whether a journal is whole and unaltered, from its first entry on. Parts may be withheld or erased: their hashes
 * stand in for them. Otherwise names the first bad entry.
 */
export function verifyJournal(entries: readonly JournalEntry[]): Verified {
  let previous: JournalEntry | undefined
  let missingParts = 0
  for (const entry of entries) {
    const why = faultOf(entry, previous)
    if (why !== null) return { holds: false, sequence: entry.sequence, why }
    missingParts += entry.parts.filter(({ value }) => value === undefined).length
    previous = entry
  }
  return { holds: true, head: previous?.hash ?? BEFORE_FIRST, missingParts }
}

function faultOf(entry: JournalEntry, previous: JournalEntry | undefined): string | null {
  if (entry.sequence !== (previous?.sequence ?? 0) + 1) return 'an entry before it is missing'
  if (previous !== undefined && entry.record !== previous.record) return 'it is of another record'
  if (previous !== undefined && entry.at < previous.at) return 'it is earlier than the one before'
  if (entry.previousHash !== (previous?.hash ?? BEFORE_FIRST)) return 'it follows another entry'
  const bad = entry.parts.find((part) => !partHolds(part))
  if (bad !== undefined) return `its part ${bad.scope} was altered`
  return hashOfEntry(entry) === entry.hash ? null : 'it was altered'
}

function partHolds({ scope, salt, hash, value }: Part): boolean {
  if (salt === undefined || value === undefined) return salt === undefined && value === undefined
  return hashOfPart(scope, salt, value) === hash
}
