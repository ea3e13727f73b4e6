// What a bare clone needs before anything of ours can run. Plain JavaScript for Node 20, Node's own modules only.
import { spawn } from 'node:child_process'
import { createHash } from 'node:crypto'
import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs'
import { createRequire } from 'node:module'
import { delimiter, join, sep } from 'node:path'
import { fileURLToPath } from 'node:url'

/** The clone's own folder. */
export const root = fileURLToPath(new URL('../../', import.meta.url))

const BIN = join(root, 'node_modules', '.bin')
const INSTALLED = join(root, 'node_modules', '.package-lock.json')
const GENERATED = join(root, 'lib', 'server', 'generated')
const BUILT = join(root, '.next', 'fettleyard-sources')
const WORKER = join('public', 'sw.js')
/** Scripts that finish a build, and so are sources of what is served. */
const FINISHING = ['finish-build.ts', 'shell-files.ts'].map((name) => join('lib', 'bin', name))
const BUILDING = join(root, 'node_modules', '.fettleyard-building')
/** Longest a build by another run is waited for, in ms. */
const BUILD_WAIT_MS = 10 * 60_000

/** A reason to stop that a person can act on: shown without a stack. */
export class Stop extends Error {}

/**
 * Tells the person, on standard error: standard output belongs to the scripts.
 * @param {string} line
 */
export function say(line) {
  process.stderr.write(`fettleyard: ${line}\n`)
}

/** The environment with our own Node 24 and tools first in PATH. */
export function environment() {
  const path = process.env.PATH ?? ''
  return path.split(delimiter)[0] === BIN
    ? process.env
    : { ...process.env, PATH: `${BIN}${delimiter}${path}` }
}

/**
 * Runs a tool to its end, its output on our standard error.
 * @param {string} command
 * @param {readonly string[]} args
 * @param {Readonly<Record<string, string>>} [extra] added to the environment
 * @returns {Promise<void>}
 */
export function run(command, args, extra = {}) {
  return new Promise((resolve, reject) => {
    const child = spawn(command, args, {
      cwd: root,
      env: { ...environment(), ...extra },
      stdio: ['ignore', 2, 2],
      shell: process.platform === 'win32',
    })
    child.once('error', (error) =>
      reject(new Stop(`${command} could not be run: ${error.message}`)),
    )
    child.once('exit', (code, signal) =>
      code === 0
        ? resolve()
        : reject(
            new Stop(`"${command} ${args.join(' ')}" ended with ${signal ?? code}; see above.`),
          ),
    )
  })
}

/**
 * Installs by the lockfile when it is newer than what is installed.
 * @returns {Promise<string>} what was done or skipped
 */
export async function install() {
  const lock = join(root, 'package-lock.json')
  if (existsSync(INSTALLED) && statSync(INSTALLED).mtimeMs >= statSync(lock).mtimeMs) {
    return 'packages are installed'
  }
  say('installing the packages that package-lock.json names (a minute or so) …')
  await run('npm', ['ci', '--include=dev', '--no-audit', '--no-fund', '--loglevel=error'])
  return 'packages installed'
}

/** The Node that runs everything of ours: the one that the lockfile brought, else this one if it is 24. */
export function node24() {
  const own = join(BIN, process.platform === 'win32' ? 'node.cmd' : 'node')
  if (existsSync(own)) return own
  if (Number(process.versions.node.split('.')[0]) >= 24) return process.execPath
  throw new Stop(
    `Node 24 is needed. On ${process.platform}-${process.arch} the packages don't bring it, and this is ` +
      `Node ${process.versions.node}: install Node 24, then run the same command again.`,
  )
}

/**
 * Makes the database client when the schema changed.
 * @returns {Promise<string>} what was done or skipped
 */
export async function generate() {
  const schema = join(root, 'prisma', 'schema.prisma')
  const version = createRequire(join(root, 'package.json'))('prisma/package.json').version
  const hash = createHash('sha256').update(readFileSync(schema)).update(version).digest('hex')
  const stamp = join(GENERATED, '.schema-hash')
  if (readText(stamp) === hash) return 'database client is up to date'
  // It only looks whether the engine's file exists; ours is never run, so Node itself will do.
  const engine = { PRISMA_SCHEMA_ENGINE_BINARY: node24(), CHECKPOINT_DISABLE: '1' }
  await run('prisma', ['generate', '--schema', schema], engine)
  writeFileSync(stamp, hash)
  return 'database client made'
}

/**
 * Builds the pages when their sources differ from those of the last build.
 * @returns {Promise<string>} what was done or skipped
 */
export async function build() {
  const sources = sourcesHash()
  const isBuilt = () => readText(BUILT) === sources && existsSync(join(root, WORKER))
  if (isBuilt()) return 'pages are built'
  await whileNobodyElseBuilds(async () => {
    if (isBuilt()) return
    say('building the pages (half a minute) …')
    await run('next', ['build'], { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' })
    await run(node24(), [join('lib', 'bin', 'finish-build.ts')])
    writeFileSync(BUILT, sources)
  })
  return 'pages built'
}

/** A hash over all that the built pages are made from. */
function sourcesHash() {
  const hash = createHash('sha256')
  const tops = ['package-lock.json', 'next.config.mjs', 'postcss.config.mjs', 'tsconfig.json']
  for (const file of [...tops, ...files('app'), ...files('lib'), ...files('public')]) {
    if (!isPageSource(file)) continue
    hash
      .update(file.split(sep).join('/'))
      .update('\0')
      .update(readFileSync(join(root, file)))
  }
  return hash.digest('hex')
}

/**
 * Pages load nothing of the server but `for-pages.ts` (test/imports.test.ts holds that), nor tests and scripts.
 * @param {string} file
 */
function isPageSource(file) {
  if (file === WORKER) return false
  if (FINISHING.includes(file)) return true
  if (/\.test\.tsx?$/.test(file) || file.startsWith(join('lib', 'bin'))) return false
  return !file.startsWith(join('lib', 'server')) || file.endsWith('for-pages.ts')
}

/**
 * @param {string} folder
 * @returns {string[]} the files under it, relative to the clone, in one order everywhere
 */
function files(folder) {
  if (!existsSync(join(root, folder))) return []
  return readdirSync(join(root, folder), { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((name) => statSync(join(root, name)).isFile())
    .sort()
}

/**
 * @param {() => Promise<void>} work
 */
async function whileNobodyElseBuilds(work) {
  const until = Date.now() + BUILD_WAIT_MS
  while (!claim()) {
    if (Date.now() > until) throw new Stop(`another build holds ${BUILDING}; delete that folder.`)
    await new Promise((resolve) => setTimeout(resolve, 300))
  }
  try {
    await work()
  } finally {
    rmSync(BUILDING, { recursive: true, force: true })
  }
}

/** Takes the build for this process, also from one that died with it. */
function claim() {
  const holder = join(BUILDING, 'pid')
  try {
    mkdirSync(BUILDING)
    writeFileSync(holder, String(process.pid))
    return true
  } catch {
    const pid = Number(readText(holder))
    if (pid > 0 && !lives(pid)) rmSync(BUILDING, { recursive: true, force: true })
    return false
  }
}

/** @param {number} pid */
function lives(pid) {
  try {
    process.kill(pid, 0)
    return true
  } catch (error) {
    return error instanceof Error && 'code' in error && error.code === 'EPERM'
  }
}

/** @param {string} file */
function readText(file) {
  try {
    return readFileSync(file, 'utf8')
  } catch {
    return undefined
  }
}
