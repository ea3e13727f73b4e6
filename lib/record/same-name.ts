/** Two names are taken for the same when they differ in case, in blanks or in how an accent is coded only. */
export const folded = (name: string): string =>
  name.normalize('NFC').trim().replace(/\s+/g, ' ').toLowerCase()

/** Whether lists, tags and imports would take two names for one. */
export const isSameName = (one: string, other: string): boolean => folded(one) === folded(other)
