import { type ChildProcess, spawn } from 'node:child_process'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { build, environment, node24, root } from '../lib/bin/prepare.mjs'

/** A real, built server in a process of its own, on a free port and a data folder of its own. */
export type TestServer = {
  readonly url: string
  readonly dataDir: string
  readonly process: ChildProcess
  /** All that it has said so far. */
  output(): string
  /** Asks it to stop. @returns its exit code */
  stop(): Promise<number | null>
  /** Stops it and throws its data away. */
  remove(): Promise<void>
}

/** What a start came to: a server that serves, or the end of one that would not. */
export type StartResult =
  | { readonly outcome: 'ready'; readonly server: TestServer }
  | { readonly outcome: 'ended'; readonly code: number | null; readonly output: string }

/** A data folder that a server may be started on. */
export function aDataDir(): string {
  const folder = mkdtempSync(join(tmpdir(), 'fettleyard-data-'))
  // Postgres, under its own user, must pass through.
  chmodSync(folder, 0o711)
  return folder
}

/** Starts a server and waits until it is ready. @throws when it would not start */
export async function aServer(env: Readonly<Record<string, string>> = {}): Promise<TestServer> {
  const result = await start(env)
  if (result.outcome === 'ready') return result.server
  throw new Error(`The server ended with ${result.code}:\n${result.output}`)
}

/** Starts a server, come what may. Settings may be added or replaced by `env`. */
export async function start(env: Readonly<Record<string, string>> = {}): Promise<StartResult> {
  await build()
  const dataDir = env.FETTLEYARD_DATA ?? aDataDir()
  const child = spawn(node24(), ['lib/server/main.ts'], {
    cwd: root,
    env: { ...environment(), NODE_ENV: 'production', PORT: '0', FETTLEYARD_DATA: dataDir, ...env },
    // The channel's end, also by a killed test, stops the server.
    stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
  })
  let said = ''
  const ended = new Promise<number | null>((resolve) => child.once('exit', resolve))
  return new Promise((resolve) => {
    const hear = (text: Buffer) => {
      said += text.toString()
      const url = /is ready at (\S+)/.exec(said)?.[1]
      if (url === undefined) return
      const stop = () => {
        child.kill('SIGTERM')
        return ended
      }
      const remove = async () => {
        await stop()
        rmSync(dataDir, { recursive: true, force: true })
      }
      const output = () => said
      resolve({ outcome: 'ready', server: { url, dataDir, process: child, output, stop, remove } })
    }
    child.stdout?.on('data', hear)
    child.stderr?.on('data', hear)
    void ended.then((code) => {
      // One that never was ready has nothing worth keeping, unless the folder was given.
      if (env.FETTLEYARD_DATA === undefined && !/is ready at/.test(said)) {
        rmSync(dataDir, { recursive: true, force: true })
      }
      resolve({ outcome: 'ended', code, output: said })
    })
  })
}
