import { readdirSync, readFileSync } from 'node:fs'

/** One rule of a stylesheet: what it is for, and what it sets. Of a property set twice the last counts. */
export interface Rule {
  readonly file: string
  readonly selector: string
  readonly sets: ReadonlyMap<string, string>
}

const FOLDER = new URL('.', import.meta.url)
const source = (file: string): string =>
  readFileSync(new URL(file, FOLDER), 'utf8').replace(/\/\*[\s\S]*?\*\//g, '')

/** The stylesheets of the look, by name. */
export const sheets: readonly string[] = readdirSync(FOLDER).filter((name) => name.endsWith('.css'))

/** Every rule of a stylesheet, those in media queries too. */
export function rulesOf(file: string): readonly Rule[] {
  return [...source(file).matchAll(/([^{};]+)\{([^{}]*)\}/g)].map(
    ([, selector = '', body = '']) => ({
      file,
      selector: selector.trim(),
      sets: new Map(
        // A data address holds semicolons of its own.
        [...body.matchAll(/([\w-]+)\s*:\s*((?:url\("[^"]*"\)|[^;])+)/g)].map(
          ([, name = '', value = '']) => [name, value.replace(/\s+/g, ' ').trim()],
        ),
      ),
    }),
  )
}

/** A token's colour by day (card) and by night (booth). */
export interface Both {
  readonly card: string
  readonly booth: string
}

/** The colours that tokens.css gives by `#`, by token. */
export function colours(): ReadonlyMap<string, Both> {
  const root = rulesOf('tokens.css').find(({ selector }) => selector.startsWith(':root'))
  if (root === undefined) throw new Error('tokens.css has no :root.')
  return new Map(
    [...root.sets].flatMap(([name, value]): [string, Both][] => {
      const [, card, booth] = /^light-dark\( ?(#\w+), (#\w+) ?\)$/.exec(value) ?? []
      const token = name.replace(/^--/, '')
      if (card !== undefined && booth !== undefined) return [[token, { card, booth }]]
      return /^#\w+$/.test(value) ? [[token, { card: value, booth: value }]] : []
    }),
  )
}

/** Relative luminance of an opaque colour (WCAG 2.2, "relative luminance"). */
function luminance(hex: string): number {
  const digits = hex.slice(1)
  const pairsOf = digits.length === 3 ? [...digits].map((d) => d + d) : (digits.match(/../g) ?? [])
  const [red = 0, green = 0, blue = 0] = pairsOf.map((pair) => {
    const part = Number.parseInt(pair, 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** Contrast of two opaque colours (WCAG 2.2, "contrast ratio"), from 1 to 21. */
export function contrast(one: string, other: string): number {
  const [light = 0, dark = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a)
  return (light + 0.05) / (dark + 0.05)
}
