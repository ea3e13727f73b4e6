/** Keeps the pinned theme on this device; it says nothing about the person. */
export const THEME_COOKIE = 'fettleyard-theme'

/** Card by day, booth by night. */
export const isPinned = (value: unknown): value is 'card' | 'booth' =>
  value === 'card' || value === 'booth'
