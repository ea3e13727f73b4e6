import { spawnSync } from 'node:child_process'
import { setTimeout as sleep } from 'node:timers/promises'
import { against, type Bench } from '../../lib/bin/figure.ts'
import type { TestServer } from '../a-server.ts'
import { withLoadedYard } from './loaded-yard.ts'
import { startPlain } from './start-plain.ts'

const NAME = 'memory/rest'
const REST_MS = 10_000

/**
 * Resident memory of the server's process, Postgres apart, in MB: started on the demonstration, its first page asked for
 * once, then left alone. Against a bare `http` and `pg` server that answered once.
 */
export const bench: Bench = {
  names: [NAME],
  async *run() {
    const value = await withLoadedYard(({ url, process: { pid } }) => atRest(url, pid))
    const plain = await startPlain('postgres://127.0.0.1/never-asked')
    const baseline = await atRest(`http://127.0.0.1:${plain.port}`, plain.pid)
    await plain.stop()
    yield against(NAME, 'MB', 'lower', value, baseline)
  },
}

async function atRest(url: string, pid: TestServer['process']['pid']): Promise<number> {
  await fetch(url)
  await sleep(REST_MS)
  const { stdout } = spawnSync('ps', ['-o', 'rss=', '-p', String(pid)], { encoding: 'utf8' })
  return (Number(stdout) * 1024) / 1e6
}
