/** Longest signature that a handover keeps, in characters. */
const LONGEST = 20_000

/** The path while it fits what a handover keeps; a longer one loses its newest points, never its form. */
export function strokesWithin(path: string): string {
  if (path.length <= LONGEST) return path
  const cut = path.slice(0, LONGEST)
  return cut.slice(0, Math.max(cut.lastIndexOf('M'), cut.lastIndexOf('L')))
}

/** Has the finger moved far enough to call it a signature? A dot is none. */
export function isSigned(path: string): boolean {
  const points = path.split(/[ML]/).filter((text) => text !== '')
  return new Set(points).size >= 3
}
