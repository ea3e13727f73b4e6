import { type ChildProcess, spawn, spawnSync } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { against, type Bench, type Figure, median } from '../../lib/bin/figure.ts'
import { root } from '../../lib/bin/prepare.mjs'
import { startPostgres } from '../../lib/server/database/postgres.ts'
import { startPlain } from './start-plain.ts'

const FRESH = 'start/fresh'
const SECOND = 'start/second'
const TURNS = 3

/**
 * Seconds from `npm start` to the answer that the server is ready. `start/fresh`: on a clone of what is committed, npm's cache
 * warm, against `npm ci` alone in another clone. `start/second`: on the same clone again, against the embedded Postgres and
 * a bare `http` and `pg` server.
 */
export const bench: Bench = {
  names: [FRESH, SECOND],
  async *run() {
    const folder = mkdtempSync(join(tmpdir(), 'fettleyard-start-'))
    chmodSync(folder, 0o711)
    try {
      for (const figure of await measure(folder)) yield figure
    } finally {
      rmSync(folder, { recursive: true, force: true })
    }
  },
}

async function measure(folder: string): Promise<Figure[]> {
  const clone = (name: string) => {
    const to = join(folder, name)
    run('git', ['clone', '--quiet', root, to], folder)
    return to
  }
  const bare = clone('bare')
  const least = await secondsOf(async () => run('npm', ['ci', '--include=dev'], bare))
  const yard = clone('yard')
  const fresh = await secondsOf(() => startYard(yard))
  const plainData = join(folder, 'plain')
  // Made beforehand, as the yard's own was by its first start.
  await (await startPostgres(plainData)).stop()
  const took: { second: number[]; plain: number[] } = { second: [], plain: [] }
  for (let turn = 0; turn < TURNS; turn++) {
    took.second.push(await secondsOf(() => startYard(yard)))
    took.plain.push(await secondsOf(() => startPlainly(plainData)))
  }
  return [
    against(FRESH, 's', 'lower', fresh, least),
    against(SECOND, 's', 'lower', median(took.second), median(took.plain)),
  ]
}

/** Something that starts, and then stops. */
type Started = { readonly stop: () => Promise<unknown> }

/** Until it has started; its stop isn't counted. */
async function secondsOf(start: () => Promise<Started | undefined>): Promise<number> {
  const began = performance.now()
  const started = await start()
  const seconds = (performance.now() - began) / 1000
  await started?.stop()
  return seconds
}

/** The environment without what the npm that runs us put there: the clones have an npm of their own. */
const shell = (): NodeJS.ProcessEnv => ({
  ...Object.fromEntries(Object.entries(process.env).filter(([name]) => !/^npm_/i.test(name))),
  NODE_ENV: 'production',
})

/** @throws with what it said where it fails */
function run(command: string, args: readonly string[], cwd: string): undefined {
  const { status, stderr } = spawnSync(command, args, { cwd, env: shell(), encoding: 'utf8' })
  if (status !== 0) throw new Error(`${command} ${args.join(' ')} ended with ${status}:\n${stderr}`)
}

async function startPlainly(data: string): Promise<Started> {
  const postgres = await startPostgres(data)
  const plain = await startPlain(postgres.url)
  return {
    async stop() {
      await plain.stop()
      await postgres.stop()
    },
  }
}

/** `npm start`, until it says that it is ready. */
async function startYard(cwd: string): Promise<Started> {
  const child: ChildProcess = spawn('npm', ['start'], {
    cwd,
    env: { ...shell(), PORT: '0', FETTLEYARD_DATA: join(cwd, 'data') },
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  const ended = new Promise((resolve) => child.once('exit', resolve))
  let said = ''
  await new Promise<void>((resolve, reject) => {
    const hear = (text: Buffer) => {
      said += text.toString()
      if (/is ready at/.test(said)) resolve()
    }
    child.stdout?.on('data', hear)
    child.stderr?.on('data', hear)
    void ended.then((code) => reject(new Error(`npm start ended with ${code}:\n${said}`)))
  })
  return {
    stop() {
      child.kill('SIGTERM')
      return ended
    },
  }
}
