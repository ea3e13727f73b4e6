/** A typed whole number from 0 up, or null where it is none. */
export function readWhole(typed: string): number | null {
  const text = typed.trim()
  return /^\d{1,6}$/.test(text) ? Number(text) : null
}
