import { rmSync } from 'node:fs'
import { setTimeout as sleep } from 'node:timers/promises'
import * as z from 'zod/mini'
import { aDataDir, aServer, type TestServer } from '../a-server.ts'

const Progress = z.object({ state: z.enum(['none', 'loading', 'loaded', 'failed']) })

let loaded: Promise<string> | undefined

/** A server just started on the loaded demonstration, which is loaded once a run. */
export async function withLoadedYard<T>(work: (server: TestServer) => Promise<T>): Promise<T> {
  loaded ??= load()
  const server = await aServer({ FETTLEYARD_DATA: await loaded })
  try {
    return await work(server)
  } finally {
    await server.stop()
  }
}

async function load(): Promise<string> {
  const dataDir = aDataDir()
  process.once('exit', () => rmSync(dataDir, { recursive: true, force: true }))
  const server = await aServer({ FETTLEYARD_DATA: dataDir })
  const door = `${server.url}/api/installation/demo`
  const headers = { 'content-type': 'application/json', origin: server.url }
  await fetch(door, { method: 'POST', headers, body: '{}' })
  let state = 'loading'
  while (state === 'loading') {
    await sleep(250)
    state = Progress.parse(await (await fetch(door)).json()).state
  }
  await server.stop()
  if (state !== 'loaded') throw new Error(`The demonstration is ${state}:\n${server.output()}`)
  return dataDir
}
