import type { JournalEntry } from './journal-entry.ts'
import type { ScopeKey } from './scope-key.ts'

/** The entry as a reader of some scopes may have it: other parts leave their hash, so that the chain still verifies. */
export const withhold = (
  entry: JournalEntry,
  mayRead: (scope: ScopeKey) => boolean,
): JournalEntry => ({
  ...entry,
  parts: entry.parts.map((part) =>
    mayRead(part.scope) ? part : { scope: part.scope, hash: part.hash },
  ),
})

/** The entry without what can name a person who left no account: the parts that a law may ask to erase. */
export const erasePersonal = (entry: JournalEntry): JournalEntry =>
  withhold(entry, (scope) => scope !== 'personal')
