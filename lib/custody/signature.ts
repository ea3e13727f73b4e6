/** The grid that a signature is drawn on: twice as wide as high, as the field under the finger is. */
export const SIGNATURE = { width: 600, height: 300 } as const

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

/** The path without what the finger drew last; empty where that was all. */
export const withoutLastStroke = (path: string): string =>
  path.slice(0, Math.max(0, path.lastIndexOf('M')))

/** Of who can't draw: the cross that has stood for a hand since before forms did, beside the name that they typed. */
export const CROSS = 'M60 240L120 180L180 120M60 120L120 180L180 240'
