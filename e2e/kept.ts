import { spawnSync } from 'node:child_process'
import { chmodSync, existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'

/** Where the loaded demonstration lies while the run lasts: a data folder that no server uses. */
function loadedDataDir(): string {
  const kept = process.env.FETTLEYARD_E2E_KEPT
  if (kept === undefined) throw new Error('e2e/build.ts was not run before.')
  // Postgres, under its own user, must pass through.
  chmodSync(kept, 0o711)
  return join(kept, 'loaded')
}

/** Keeps the data folder of a stopped server as the loaded demonstration. */
export const keepLoaded = (from: string): void => copy(from, loadedDataDir())

/** Makes `to`, an empty folder, a copy of the loaded demonstration. */
export function copyLoaded(to: string): void {
  const from = loadedDataDir()
  if (!existsSync(from))
    throw new Error('The demonstration was not loaded before (loading.spec.ts).')
  copy(from, to)
}

/** With owners and rights, which Postgres insists on. */
function copy(from: string, to: string): void {
  mkdirSync(to, { recursive: true })
  const { status, stderr } = spawnSync('cp', ['-a', `${from}/.`, to], { encoding: 'utf8' })
  if (status !== 0) throw new Error(`${from} was not copied: ${stderr}`)
}
