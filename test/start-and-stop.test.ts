import { once } from 'node:events'
import { rmSync } from 'node:fs'
import { createServer } from 'node:net'
import pg from 'pg'
import { io } from 'socket.io-client'
import { describe, expect, it } from 'vitest'
import { aDatabase } from './a-database.ts'
import { aDataDir, aServer, start } from './a-server.ts'

describe('a server', () => {
  it('answers health and pages with a nonce on every script, and ends cleanly when asked', async () => {
    const server = await aServer()
    const health = await fetch(`${server.url}/api/health`)
    expect(await health.json()).toEqual({ status: 'ok', version: expect.any(String) })

    const page = await fetch(`${server.url}/sign-in`)
    const nonce = /'nonce-([^']+)'/.exec(page.headers.get('content-security-policy') ?? '')?.[1]
    const scripts = (await page.text()).match(/<script[^>]*>/g) ?? []
    expect(scripts.length).toBeGreaterThan(0)
    expect(scripts.filter((tag) => !tag.includes(`nonce="${nonce}"`))).toEqual([])
    expect(page.headers.get('x-content-type-options')).toBe('nosniff')

    expect(await server.stop()).toBe(0)
    rmSync(server.dataDir, { recursive: true, force: true })
  })

  it('says that the port is in use, before it touches any data', async () => {
    const other = createServer().listen(0, '127.0.0.1')
    await once(other, 'listening')
    const address = other.address()
    const port = typeof address === 'object' && address !== null ? address.port : 0
    const result = await start({ PORT: String(port) })
    other.close()
    expect(result).toMatchObject({ outcome: 'ended', code: 1 })
    expect(result).toMatchObject({ output: expect.stringContaining(`Port ${port} is in use`) })
  })

  it('says that the data folder is in use by another run', async () => {
    const first = await aServer()
    const second = await start({ FETTLEYARD_DATA: first.dataDir })
    await first.remove()
    expect(second).toMatchObject({ outcome: 'ended', code: 1 })
    expect(second).toMatchObject({ output: expect.stringContaining('in use by another run') })
  })

  it('recovers by itself after it was killed', async () => {
    const dataDir = aDataDir()
    const killed = await aServer({ FETTLEYARD_DATA: dataDir })
    killed.process.kill('SIGKILL')
    const next = await aServer({ FETTLEYARD_DATA: dataDir })
    expect((await fetch(`${next.url}/api/health`)).status).toBe(200)
    await next.remove()
  })

  it('refuses a database of a newer version, naming the way out', async () => {
    const database = await aDatabase()
    const client = new pg.Client({ connectionString: database.url })
    await client.connect()
    await client.query(
      `insert into _prisma_migrations (id, checksum, finished_at, migration_name)
       values ('x', 'x', now(), '99990101000000_tomorrow')`,
    )
    await client.end()
    const result = await start({ DATABASE_URL: database.url })
    await database.drop()
    expect(result).toMatchObject({ outcome: 'ended', code: 1 })
    expect(result).toMatchObject({ output: expect.stringMatching(/newer version.*tomorrow/) })
  })

  it('takes a change from its own pages only', async () => {
    const server = await aServer()
    const post = (headers: Record<string, string>) =>
      fetch(`${server.url}/api/nothing`, { method: 'POST', headers, body: '{}' })
    const json = { 'content-type': 'application/json' }
    expect((await post(json)).status).toBe(403)
    expect((await post({ ...json, origin: 'http://elsewhere.example' })).status).toBe(403)
    expect((await post({ origin: server.url })).status).toBe(415)
    expect((await post({ ...json, origin: server.url })).status).toBe(404)
    await server.remove()
  })

  it('takes sockets from its own pages only', async () => {
    const server = await aServer()
    const socket = io(server.url, {
      transports: ['websocket'],
      reconnection: false,
      extraHeaders: { origin: 'http://elsewhere.example' },
    })
    const refused = await new Promise((resolve) => {
      socket.once('connect', () => resolve(false))
      socket.once('connect_error', () => resolve(true))
    })
    socket.close()
    expect(refused).toBe(true)
    await server.remove()
  })
})
