import { mkdirSync } from 'node:fs'
import { getRequestListener } from '@hono/node-server'
import manifest from '../../package.json' with { type: 'json' }
import { PATH_HEADER } from '../command/path-header.ts'
import { apiApp } from './api/app.ts'
import { openPool } from './database/database.ts'
import { migrate } from './database/migrate.ts'
import { startPostgres } from './database/postgres.ts'
import { openPrisma } from './database/prisma.ts'
import { type Doors, openDoors } from './doors.ts'
import { type Env, readEnv } from './env.ts'
import { provideForPages } from './for-pages.ts'
import { listenToOtherNodes } from './live/other-nodes.ts'
import { openSockets } from './live/sockets.ts'
import { pageFunctions } from './page-functions.ts'
import { authSecret } from './people/secret.ts'
import { openCommands } from './run-command.ts'
import type { Services } from './services.ts'
import { Stop } from './stop.ts'
import { stampAddress } from './web/address.ts'
import { compress } from './web/compress.ts'
import { type Front, openFront } from './web/front.ts'
import { allowOwnScripts, pagePolicy, protect } from './web/headers.ts'
import { ownOrigin, publicOrigin } from './web/origin.ts'
import { openPages, type Pages } from './web/pages.ts'
import { staticFiles } from './web/static-files.ts'

/** The service worker's script, made when the pages are built. */
const WORKER_PATH = '/sw.js'

/** What a stop closes, last opened first: the port before the sockets, Postgres at the very end. */
const closers: (() => Promise<unknown>)[] = []
let stopping = false

process.once('SIGINT', onSignal)
process.once('SIGTERM', onSignal)
process.once('SIGHUP', onSignal)
// The launcher was asked to stop, or was killed.
process.once('disconnect', () => void stop(0))

try {
  await start()
} catch (error) {
  if (!stopping) {
    if (error instanceof Stop) console.error(`fettleyard: ${error.message}`)
    else console.error(error)
    await stop(1)
  }
}

async function start(): Promise<void> {
  const began = performance.now()
  const env = readEnv(process.env)
  const front = await openFront(env)
  closers.push(front.close)
  mkdirSync(env.dataDir, { recursive: true, mode: 0o711 })
  const databaseUrl = env.databaseUrl ?? (await embedded(env.dataDir))
  const applied = await migrate(databaseUrl)
  if (applied.length > 0) say(`migrations applied: ${applied.join(', ')}.`)

  const services = openServices(env, front, databaseUrl)
  const commands = openCommands(services.pool)
  const others = await listenToOtherNodes(databaseUrl, services.pool, commands)
  closers.push(others.close)
  const doors = openDoors(services, commands)
  closers.push(doors.close)
  await doors.demonstration.recover()
  provideForPages(pageFunctions(doors))
  // next-auth makes its addresses of this.
  Object.assign(process.env, { NEXTAUTH_URL: services.origin })
  const pages = await openPages(env, front)
  closers.push(pages.close)
  // First at a stop: requests finish while all else is still there, and sockets, which never would, are closed.
  closers.push(() => Promise.all([front.close(), services.io.close()]))
  front.answerWith(listener(doors, pages))
  const seconds = ((performance.now() - began) / 1000).toFixed(1)
  console.log(`Fettleyard ${services.version} is ready at ${services.origin} (after ${seconds} s)`)
}

async function embedded(dataDir: string): Promise<string> {
  const postgres = await startPostgres(dataDir)
  closers.push(postgres.stop)
  void postgres.lost.then(() => {
    console.error('fettleyard: the database ended by itself; its last words are in postgres.log.')
    return stop(1)
  })
  return postgres.url
}

function openServices(env: Env, front: Front, databaseUrl: string): Services {
  const isOwnOrigin = ownOrigin(env, front.port)
  const pool = openPool(databaseUrl)
  const prisma = openPrisma(pool)
  closers.push(() => prisma.$disconnect().then(() => pool.end()))
  return {
    env,
    version: manifest.version,
    origin: publicOrigin(env, front.port),
    isOwnOrigin,
    databaseUrl,
    pool,
    prisma,
    io: openSockets(front.http, isOwnOrigin),
    secret: authSecret(env),
  }
}

/** The API by Hono, ahead of Next, which answered a tenth of the requests a second; sign-in and pages by Next. */
function listener(doors: Doors, pages: Pages) {
  const { env, secure } = doors
  const api = getRequestListener(apiApp(doors).fetch, { overrideGlobalObjects: false })
  const statics = staticFiles(env)
  const policy = pagePolicy(env.mode)
  const answer: Pages['answer'] = (request, response) => {
    const path = request.url ?? '/'
    if (/^\/api(?!\/auth\/)(?=[/?]|$)/.test(path)) return void api(request, response)
    if (!path.startsWith('/_next/')) allowOwnScripts(request, response, policy)
    // So that sign-in can lead back to it.
    request.headers[PATH_HEADER] = path
    // The browser asks for a new worker itself, and must never be told an old one.
    if (path === WORKER_PATH) response.setHeader('cache-control', 'no-cache')
    pages.answer(request, response)
  }
  return (...[request, response]: Parameters<Pages['answer']>) => {
    protect(response, secure)
    stampAddress(request, env)
    statics(request, response, () =>
      compress.pass(request, response, () => answer(request, response)),
    )
  }
}

function onSignal(): void {
  // A second Ctrl-C is for those who can't wait.
  process.once('SIGINT', () => process.exit(130))
  void stop(0)
}

/** Finishes what is in flight and closes everything, once. */
async function stop(code: number): Promise<void> {
  if (stopping) return
  stopping = true
  if (code === 0) say('stopping …')
  for (const close of closers.reverse()) {
    await close().catch((error: unknown) => console.error(error))
  }
  process.exit(code)
}

function say(line: string): void {
  console.error(`fettleyard: ${line}`)
}
