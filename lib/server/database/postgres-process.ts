import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { randomBytes } from 'node:crypto'
import {
  chownSync,
  closeSync,
  existsSync,
  mkdirSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { createServer } from 'node:net'
import { basename, dirname, join } from 'node:path'
import { Stop } from '../stop.ts'
import type { PostgresPlace } from './postgres-place.ts'

/** The embedded database's only role, its owner. */
export const ROLE = 'fettleyard'

/** A shell that sends Postgres a fast shutdown when the pipe from us closes, also when we were killed. */
const WATCHDOG =
  'exec 3<&0; "$0" "$@" </dev/null 3<&- & P=$!; (cat <&3 >/dev/null; kill -INT $P 2>/dev/null) & W=$!; ' +
  'wait $P; S=$?; kill $W 2>/dev/null; exit $S'

const ENVIRONMENT: NodeJS.ProcessEnv = {
  // Only its type asks for this one.
  NODE_ENV: 'production',
  PATH: process.env.PATH ?? '/usr/bin:/bin',
  LC_ALL: 'C',
  TZ: 'UTC',
}

/** A clean shutdown takes under a second; after this many ms we press harder. */
const STOP_MS = 15_000
/** Half-made data folders of starts that died are kept this long, in ms. */
const HALF_MADE_MS = 10 * 60_000

/** What a running Postgres wrote into its data folder. */
export type Postmaster = { readonly pid: number; readonly port: number }

/** A Postgres that we started. */
export type PostgresProcess = {
  readonly port: number
  /** Fulfilled when it ended, asked or not. */
  readonly ended: Promise<void>
  /** Closes it cleanly. */
  stop(): Promise<void>
}

/**
 * Makes the data folder, if there is none: in a neighbour folder, then renamed, so that it is whole or absent.
 * @throws {Stop} when it is of another major version, or can't be made
 */
export function makeCluster(place: PostgresPlace, password: string): void {
  removeHalfMade(place.data)
  const version = join(place.data, 'PG_VERSION')
  if (existsSync(version)) {
    refuseOtherVersion(place, readFileSync(version, 'utf8').trim())
    return
  }
  const half = `${place.data}.new-${randomBytes(4).toString('hex')}`
  const pwfile = `${half}.pw`
  mkdirSync(half, { mode: 0o700 })
  writeFileSync(pwfile, password, { mode: 0o600 })
  if (place.as !== undefined) {
    for (const path of [half, pwfile]) chownSync(path, place.as.uid, place.as.gid)
  }
  const args = ['--pgdata', half, '--username', ROLE, '--pwfile', pwfile, '--auth', 'scram-sha-256']
  const locale = ['--encoding', 'UTF8', '--locale-provider', 'builtin', '--locale', 'C.UTF-8']
  const made = spawnSync(join(place.bin, 'initdb'), [...args, ...locale], {
    cwd: '/',
    env: ENVIRONMENT,
    encoding: 'utf8',
    ...place.as,
  })
  rmSync(pwfile, { force: true })
  if (made.status !== 0) {
    rmSync(half, { recursive: true, force: true })
    throw new Stop(
      `The database could not be made in ${place.data}: ${made.error?.message ?? made.stderr.trim()}`,
    )
  }
  try {
    renameSync(half, place.data)
  } catch {
    // Another start of the same folder was first; whose it is shows when Postgres starts.
    rmSync(half, { recursive: true, force: true })
  }
}

/** Starts Postgres on the data folder, on loopback only; it may still refuse (see `ended`). */
export async function spawnPostgres(
  place: PostgresPlace,
  log: string,
  settings: Readonly<Record<string, string>>,
): Promise<PostgresProcess> {
  const port = await freePort()
  const all = {
    listen_addresses: '127.0.0.1',
    port: String(port),
    unix_socket_directories: '',
    max_connections: '200',
    timezone: 'UTC',
    log_timezone: 'UTC',
    ...settings,
  }
  const options = Object.entries(all).flatMap(([name, value]) => ['-c', `${name}=${value}`])
  const command = [join(place.bin, 'postgres'), '-D', place.data, ...options]
  const output = openSync(log, 'a', 0o600)
  // Its own session: a terminal's Ctrl-C is for us, and we close Postgres last.
  const child = spawn('/bin/sh', ['-c', WATCHDOG, ...command], {
    cwd: '/',
    env: ENVIRONMENT,
    stdio: ['pipe', output, output],
    detached: true,
    ...place.as,
  })
  closeSync(output)
  child.stdin?.on('error', () => {})
  const ended = new Promise<void>((resolve) => {
    child.once('exit', () => resolve())
    child.once('error', () => resolve())
  })
  return { port, ended, stop: () => stopProcess(child, ended, place.data) }
}

/** The Postgres that lives on that data folder, ours or not; a stale note of a dead one is removed. */
export function livingPostmaster(data: string): Postmaster | undefined {
  const file = join(data, 'postmaster.pid')
  const lines = readText(file)?.split('\n')
  if (lines === undefined) return undefined
  const [pid, , , port] = lines.map(Number)
  if (!pid || Number.isNaN(pid)) return undefined
  if (!lives(pid)) return undefined
  if (isAnother(pid, data)) {
    // Its number was given to another program since; Postgres itself would refuse to start.
    rmSync(file, { force: true })
    return undefined
  }
  return { pid, port: port || 0 }
}

/** Asks any Postgres, by its number, for a fast shutdown. */
export function shutDown(pid: number): void {
  try {
    process.kill(pid, 'SIGINT')
  } catch {
    // It is gone, or another user's: the wait that follows tells.
  }
}

async function stopProcess(child: ChildProcess, ended: Promise<void>, data: string): Promise<void> {
  child.stdin?.end()
  const timer = setTimeout(() => {
    const postmaster = livingPostmaster(data)
    if (postmaster !== undefined) process.kill(postmaster.pid, 'SIGQUIT')
  }, STOP_MS)
  await ended
  clearTimeout(timer)
}

function refuseOtherVersion(place: PostgresPlace, found: string): void {
  const shown = spawnSync(join(place.bin, 'postgres'), ['--version'], { encoding: 'utf8' })
  const ours = /\d+/.exec(shown.stdout ?? '')?.[0]
  if (ours === undefined || ours === found) return
  throw new Stop(
    `The database in ${place.data} was made by PostgreSQL ${found}, and this Fettleyard brings ${ours}. ` +
      'Use the Fettleyard that made it, or set FETTLEYARD_DATA to another folder.',
  )
}

function removeHalfMade(data: string): void {
  const folder = dirname(data)
  for (const name of readdirSync(folder)) {
    if (!name.startsWith(`${basename(data)}.new-`)) continue
    const path = join(folder, name)
    if (Date.now() - statSync(path).mtimeMs > HALF_MADE_MS)
      rmSync(path, { recursive: true, force: true })
  }
}

function isAnother(pid: number, data: string): boolean {
  if (process.platform !== 'linux') return false
  try {
    return readlinkSync(`/proc/${pid}/cwd`) !== realpathSync(data)
  } catch {
    return readText(`/proc/${pid}/comm`)?.trim() !== 'postgres'
  }
}

function lives(pid: number): boolean {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer()
    probe.once('error', reject)
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address()
      const port = typeof address === 'object' && address !== null ? address.port : 0
      probe.close(() => resolve(port))
    })
  })
}

function readText(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}
