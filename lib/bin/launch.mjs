// Starts every script of package.json on a bare clone. Plain JavaScript for Node 20, Node's own modules only.
import { spawn } from 'node:child_process'
import { readFileSync } from 'node:fs'
import { constants } from 'node:os'
import { join } from 'node:path'
import { build, environment, generate, install, node24, root, Stop, say } from './prepare.mjs'

/** How often we look whether npm still lives, in ms. */
const NPM_WATCH_MS = 300

/** Scripts that serve the built pages. */
const NEEDS_BUILD = new Set(['start', 'bench', 'soak', 'shots'])

/** How each script is started; any other is `lib/bin/<name>.ts`. */
const MAIN = new Map([
  ['start', { args: ['lib/server/main.ts'], env: { NODE_ENV: 'production' } }],
  [
    'dev',
    {
      // Pages reload by Next; what the server itself loads, by a restart.
      args: ['--watch-path=lib', '--watch-preserve-output', 'lib/server/main.ts'],
      env: { NODE_ENV: 'development' },
    },
  ],
])

try {
  process.exitCode = await launch(process.argv[2] ?? 'start', process.argv.slice(3))
} catch (error) {
  if (!(error instanceof Stop)) throw error
  say(error.message)
  process.exitCode = 1
}

/**
 * Prepares what the script needs, then runs it to its end.
 * @param {string} name
 * @param {readonly string[]} args
 */
async function launch(name, args) {
  const done = [await install(), await generate()]
  if (NEEDS_BUILD.has(name)) done.push(await build())
  if (name === 'start' || name === 'dev') say(`${done.join(', ')}.`)
  const main = MAIN.get(name) ?? { args: [join('lib', 'bin', `${name}.ts`)], env: {} }
  return follow(name, [...main.args, ...args], main.env)
}

/**
 * Runs our Node with an open channel, whose end tells the child that its launcher was asked to stop or was killed.
 * @param {string} name
 * @param {readonly string[]} args
 * @param {Readonly<Record<string, string>>} env
 * @returns {Promise<number>} its exit code
 */
function follow(name, args, env) {
  return new Promise((resolve, reject) => {
    const child = spawn(node24(), args, {
      cwd: root,
      env: { ...environment(), ...env },
      stdio: ['inherit', 'inherit', 'inherit', 'ipc'],
    })
    // A terminal sends Ctrl-C to the child as well, so a signal isn't passed on: it would count twice.
    const stop = () => {
      if (child.connected) child.disconnect()
      // The watcher of `dev` hears no such end, and passes this on.
      if (name === 'dev') child.kill('SIGTERM')
    }
    for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP']) process.on(signal, stop)
    whenNpmIsGone(stop)
    child.once('error', reject)
    child.once('exit', (code, signal) =>
      resolve(code ?? 128 + (signal === null ? 0 : constants.signals[signal])),
    )
  })
}

/**
 * A SIGTERM for npm ends the shell between it and us, and a kill -9 of npm not even that: neither reaches us by itself.
 * @param {() => void} stop
 */
function whenNpmIsGone(stop) {
  if (process.env.npm_lifecycle_event === undefined) return
  const first = ancestors()
  setInterval(() => ancestors() !== first && stop(), NPM_WATCH_MS).unref()
}

/** Our parent and, where it can be read, its parent. */
function ancestors() {
  const parent = process.ppid
  try {
    const stat = readFileSync(`/proc/${parent}/stat`, 'utf8')
    return `${parent} ${stat.slice(stat.lastIndexOf(')') + 4).split(' ')[0]}`
  } catch {
    return String(parent)
  }
}
