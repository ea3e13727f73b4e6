import { type ChildProcess, spawn } from 'node:child_process'
import { join } from 'node:path'

/** Starts the plain server on a database, in a process of its own; `live`: told to all who have its page open. */
export async function startPlain(url: string, settings: readonly string[] = []) {
  const file = join(import.meta.dirname, 'plain-server.ts')
  const child: ChildProcess = spawn(process.execPath, [file, url, ...settings], {
    stdio: ['ignore', 'pipe', 'inherit'],
  })
  const port = await new Promise<number>((resolve, reject) => {
    child.once('exit', () => reject(new Error('The plain server did not start.')))
    child.stdout?.on('data', (text: Buffer) => {
      const found = /port (\d+)/.exec(text.toString())?.[1]
      if (found !== undefined) resolve(Number(found))
    })
  })
  const ended = new Promise((resolve) => child.once('exit', resolve))
  return {
    port,
    pid: child.pid ?? 0,
    stop() {
      child.kill()
      return ended
    },
  }
}
