// A backslash before anything but a letter or a digit takes away its meaning: `\|` is a bar in a name and not the end of it.

const isBlank = (char: string | undefined): boolean => char !== undefined && /^\s$/.test(char)

/** Whether the character at `at` stands behind a backslash that is not itself behind one. */
function isEscaped(raw: string, at: number): boolean {
  let slashes = 0
  while (raw[at - 1 - slashes] === '\\') slashes++
  return slashes % 2 === 1
}

/** The cell, or a piece of one, without the blanks around it; an escaped blank stays. */
export function trimmed(raw: string): string {
  let from = 0
  while (isBlank(raw[from])) from++
  let to = raw.length
  while (to > from && isBlank(raw[to - 1]) && !isEscaped(raw, to - 1)) to--
  return raw.slice(from, to)
}

/** What a cell says, without blanks around it and without its escapes. */
export const plainText = (raw: string): string => trimmed(raw).replace(/\\([^A-Za-z0-9])/gu, '$1')

/** The several things in a cell, still escaped. Empty ones are left out. */
export const things = (raw: string): string[] =>
  (raw.match(/(?:\\[^A-Za-z0-9]|[^|\\]|\\)+/gu) ?? []).map(trimmed).filter((one) => one !== '')

/** A text as a cell says it; `meaningful` are the characters that mean something where it stands. */
export const escaped = (text: string, meaningful = ''): string =>
  text
    .replace(/./gsu, (char) => (char === '\\' || meaningful.includes(char) ? `\\${char}` : char))
    .replace(/^\s/, '\\$&')
    .replace(/\s$/, '\\$&')
