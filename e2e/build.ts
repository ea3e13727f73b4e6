import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build } from '../lib/bin/prepare.mjs'

/** The browser sees the built pages, as people do. What the run keeps aside goes when it ends. */
export default async function prepare(): Promise<() => void> {
  await build()
  const kept = mkdtempSync(join(tmpdir(), 'fettleyard-e2e-'))
  process.env.FETTLEYARD_E2E_KEPT = kept
  return () => rmSync(kept, { recursive: true, force: true })
}
