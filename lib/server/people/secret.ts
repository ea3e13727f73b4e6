import { randomBytes } from 'node:crypto'
import { existsSync, linkSync, mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Env } from '../env.ts'

/** The secret that signs sessions: AUTH_SECRET, else one made at the first start and kept in the data folder. */
export function authSecret(env: Env): string {
  if (env.authSecret !== undefined) return env.authSecret
  const file = join(env.dataDir, 'auth-secret')
  if (!existsSync(file)) make(file, env.dataDir)
  return readFileSync(file, 'utf8').trim()
}

/** Whole or not at all, and the first of two nodes wins. */
function make(file: string, folder: string): void {
  mkdirSync(folder, { recursive: true })
  const half = `${file}.${process.pid}`
  writeFileSync(half, randomBytes(32).toString('base64url'), { mode: 0o600 })
  try {
    linkSync(half, file)
  } catch (error) {
    if (!existsSync(file)) throw error
  } finally {
    rmSync(half, { force: true })
  }
}
