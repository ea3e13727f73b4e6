/**
 * JSON in one form only, after RFC 8785 (JSON Canonicalization Scheme): keys sorted by UTF-16 units, no spaces,
 * numbers as ECMAScript writes them. Equal values give equal text, so that a hash of it can be checked anywhere.
 */
export function canonicalJson(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(canonicalJson).join(',')}]`
  if (typeof value === 'object' && value !== null) {
    const parts = Object.entries(value)
      .filter(([, v]) => v !== undefined)
      .sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0))
      .map(([k, v]) => `${JSON.stringify(k)}:${canonicalJson(v)}`)
    return `{${parts.join(',')}}`
  }
  if (typeof value === 'number' && !Number.isFinite(value))
    throw new TypeError('JSON has no NaN and no infinity.')
  const text = JSON.stringify(value)
  if (text === undefined) throw new TypeError(`JSON has no ${typeof value}.`)
  return text
}
