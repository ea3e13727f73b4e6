import { once } from 'node:events'
import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { createServer } from 'node:http'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { getRequestListener } from '@hono/node-server'
import { io, type Socket } from 'socket.io-client'
import type { Changed, ClientEvents, ServerEvents } from '../lib/command/wire.ts'
import type { PersonId } from '../lib/record/ids.ts'
import { Instant } from '../lib/record/scalars.ts'
import { apiApp } from '../lib/server/api/app.ts'
import { openPrisma } from '../lib/server/database/prisma.ts'
import { type Doors, openDoors } from '../lib/server/doors.ts'
import { readEnv } from '../lib/server/env.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { listenToOtherNodes } from '../lib/server/live/other-nodes.ts'
import { openSockets } from '../lib/server/live/sockets.ts'
import { openCommands } from '../lib/server/run-command.ts'
import { stampAddress } from '../lib/server/web/address.ts'
import { ownOrigin, publicOrigin } from '../lib/server/web/origin.ts'
import { aPool } from './plant.ts'

/** One node of the yard without its pages: API and sockets on a real port, on a real database. */
export type TestYard = {
  readonly url: string
  readonly doors: Doors
  readonly close: () => Promise<void>
}

/** Opens a node on the database at `databaseUrl`. */
export async function aYard(
  databaseUrl: string,
  settings: Readonly<Record<string, string>> = {},
): Promise<TestYard> {
  const dataDir = mkdtempSync(join(tmpdir(), 'fettleyard-yard-'))
  chmodSync(dataDir, 0o711)
  const env = readEnv({ DATABASE_URL: databaseUrl, FETTLEYARD_DATA: dataDir, ...settings })
  const http = createServer()
  http.listen(0, '127.0.0.1')
  await once(http, 'listening')
  const address = http.address()
  const port = typeof address === 'object' && address !== null ? address.port : 0
  const isOwnOrigin = ownOrigin(env, port)
  const pool = aPool(databaseUrl)
  const prisma = openPrisma(pool)
  const commands = openCommands(pool)
  const others = await listenToOtherNodes(databaseUrl, pool, commands)
  const io = openSockets(http, isOwnOrigin)
  const services = {
    env,
    version: '0.0.0',
    origin: publicOrigin(env, port),
    isOwnOrigin,
    databaseUrl,
    pool,
    prisma,
    io,
    secret: 'the secret of the tests, which is long enough',
  }
  const doors = openDoors(services, commands)
  const answer = getRequestListener(apiApp(doors).fetch, { overrideGlobalObjects: false })
  http.on('request', (request, response) => {
    if (request.url?.startsWith('/socket.io')) return
    stampAddress(request, env)
    void answer(request, response)
  })
  return {
    url: `http://127.0.0.1:${port}`,
    doors,
    async close() {
      await doors.close()
      await io.close()
      await others.close()
      await prisma.$disconnect()
      await pool.end()
      rmSync(dataDir, { recursive: true, force: true })
    },
  }
}

/** A browser of that person: their cookie, and our own pages' Origin. */
export type Browser = {
  readonly cookie: string
  readonly get: (path: string) => Promise<Response>
  readonly post: (path: string, body: unknown) => Promise<Response>
  readonly command: (name: string, input: unknown, record?: string) => Promise<Response>
  readonly socket: () => TestSocket
}
export type TestSocket = Socket<ServerEvents, ClientEvents>

/** A browser in which that person has just signed in. */
export async function aBrowser({ url, doors }: TestYard, person: PersonId): Promise<Browser> {
  const at = Instant.parse(new Date().toISOString())
  const session = { person, issuedAt: at, proof: 'password', provedAt: at } as const
  const cookie = (await doors.sessions.cookieFor(session)).split(';')[0] ?? ''
  return browserWith(url, cookie)
}

/** A browser with that cookie, or none. */
export function browserWith(url: string, cookie: string): Browser {
  const headers = { cookie, origin: url }
  const post = (path: string, body: unknown) =>
    fetch(url + path, {
      method: 'POST',
      headers: { ...headers, 'content-type': 'application/json' },
      body: JSON.stringify(body),
    })
  return {
    cookie,
    get: (path) => fetch(url + path, { headers }),
    post,
    command: (name, input, record) =>
      post('/api/commands', {
        name,
        input,
        key: freshKey(),
        happenedAt: new Date().toISOString(),
        ...(record !== undefined && { expected: { [record]: 2 ** 31 } }),
      }),
    socket: () =>
      io(url, { transports: ['websocket'], extraHeaders: headers, reconnection: false }),
  }
}

/** Connects and follows a record; answers its version. */
export async function following(socket: TestSocket, record: string): Promise<number | null> {
  if (!socket.connected) await heard(socket, 'connect')
  return new Promise((answer) => socket.emit('watch', record, answer))
}

/** Waits for a socket's next event of that name. */
export const heard = (socket: TestSocket, event: 'connect' | 'disconnect'): Promise<void> =>
  new Promise((done) => socket.once(event, () => done()))

/** Keeps every change that a socket hears. */
export function changesOf(socket: TestSocket): {
  readonly all: readonly Changed[]
  /** Waits until one of them comes to that version. */
  readonly until: (version: number) => Promise<Changed>
} {
  const all: Changed[] = []
  const waiting = new Set<() => void>()
  socket.on('changed', (changed) => {
    all.push(changed)
    for (const look of waiting) look()
  })
  return {
    all,
    until: (version) =>
      new Promise((found) => {
        const look = () => {
          const changed = all.find(({ to }) => to >= version)
          if (changed === undefined) return
          waiting.delete(look)
          found(changed)
        }
        waiting.add(look)
        look()
      }),
  }
}
