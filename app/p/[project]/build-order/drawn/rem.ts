/** A length of the wall that grows with the reader's letters: its px are those of letters of 16 px. */
export const rem = (px: number): string => `${Math.round(px * 100) / 1600}rem`
