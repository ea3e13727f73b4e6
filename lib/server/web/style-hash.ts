import { createHash } from 'node:crypto'
import { readdirSync, readFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const CHUNKS = fileURLToPath(new URL('../../../.next/static/chunks', import.meta.url))

/**
 * The build's one stylesheet as the content policy names it (CSP 3, hash-source): Next writes it into each page, without a nonce.
 *
 * @throws Error where the build has more than one: Next would join them in one element, which no hash of theirs lets in, and pages
 * would stand without any style.
 */
export function styleHash(): string {
  const sheets = readdirSync(CHUNKS).filter((name) => name.endsWith('.css'))
  const [sheet] = sheets
  if (sheet === undefined || sheets.length > 1) {
    throw new Error(
      `The build has ${sheets.length} stylesheets and must have one: import styles in app/globals.css only.`,
    )
  }
  return `sha256-${createHash('sha256')
    .update(readFileSync(join(CHUNKS, sheet)))
    .digest('base64')}`
}
