// Checks an exported journal with nothing of ours but this page: Node's own modules, no imports from the project.
// Usage: node verify-independently.mjs journal.json   (a JSON list of entries, oldest first)
import { createHash } from 'node:crypto'
import { readFileSync } from 'node:fs'

/** @param {unknown} value JSON with sorted keys and no spaces (RFC 8785) @returns {string} */
function canonical(value) {
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`
  if (value === null || typeof value !== 'object') return JSON.stringify(value)
  const members = Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1))
  return `{${members.map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`).join(',')}}`
}

/** @param {unknown} value */
const hash = (value) => createHash('sha256').update(canonical(value)).digest('hex')

let previous = '0'.repeat(64)
let sequence = 0
let withheld = 0
for (const entry of JSON.parse(readFileSync(process.argv[2] ?? '', 'utf8'))) {
  const { hash: own, parts, ...told } = entry
  /** @param {string} why */
  const bad = (why) => {
    console.log(`entry ${entry.sequence}: ${why}`)
    process.exit(1)
  }
  if (entry.sequence !== ++sequence) bad('an entry before it is missing')
  if (entry.previousHash !== previous) bad('it follows another entry')
  for (const part of parts) {
    if (part.value === undefined) withheld++
    else if (hash({ salt: part.salt, scope: part.scope, value: part.value }) !== part.hash) {
      bad(`its part ${part.scope} was altered`)
    }
  }
  const shown = parts.map((/** @type {any} */ part) => ({ scope: part.scope, hash: part.hash }))
  if (hash({ ...told, parts: shown }) !== own) bad('it was altered')
  previous = own
}
console.log(`${sequence} entries hold, ${withheld} parts withheld; the last hash is ${previous}`)
