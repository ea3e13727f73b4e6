import { chmodSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import pg from 'pg'
import type { Entity } from '../../lib/record/entity.ts'
import type { PersonId, ProjectId } from '../../lib/record/ids.ts'
import { Instant } from '../../lib/record/scalars.ts'
import { migrate } from '../../lib/server/database/migrate.ts'
import { startPostgres } from '../../lib/server/database/postgres.ts'
import { freshKey } from '../../lib/server/fresh-key.ts'
import { openSessions } from '../../lib/server/people/session.ts'
import { aServer } from '../a-server.ts'
import { aLink, anAssembly, anId, aParty, aProject, aStage } from '../builders.ts'
import { aPool, aShopWithBay, plant } from '../plant.ts'
import { aMembership } from '../shop-builders.ts'
import { postHead } from './http-client.ts'
import type { NextRequest } from './load.ts'
import { startPlain } from './start-plain.ts'

const STAGES = 120
const ASSEMBLIES = 40
const ONLOOKER = anId('psn', 'onlooker')
const SECRET = 'the secret of the bench, which is long enough'

/** A server under load: where it is, its process, and what clients send to it. */
export interface Rival {
  readonly port: number
  readonly pid: number
  readonly next: NextRequest
}
/** Two servers on databases of their own, alike. */
export interface Rivals {
  readonly ours: Rival
  readonly plain: Rival
  readonly projects: readonly ProjectId[]
  /** The cookie of somebody else in the shop, who looks on. */
  readonly onlooker: string
}

/** What may differ from one bench to another: settings of our server, arguments of the plain one. */
interface RivalSettings {
  readonly env?: Readonly<Record<string, string>>
  readonly plain?: readonly string[]
}

/** A car with a build order of 120 stages. */
function aCar(name: string, shop: ReturnType<typeof aShopWithBay>): Entity[] {
  const project = anId('prj', name)
  const party = anId('pty', name)
  const assemblies = Array.from({ length: ASSEMBLIES }, (_, n) =>
    anAssembly({ id: anId('asm', `${name}x${n}`), project, custodian: party }),
  )
  const stages = Array.from({ length: STAGES }, (_, n) =>
    aStage({
      id: anId('stg', `${name}x${n}`),
      project,
      party,
      number: n + 1,
      assemblies: [anId('asm', `${name}x${n % ASSEMBLIES}`)],
    }),
  )
  const links = stages
    .slice(1)
    .map((to, n) => aLink({ project, from: anId('stg', `${name}x${n}`), to: to.id }))
  return [
    aProject({ id: project, name }),
    aParty({ id: party, project, lead: true, shop: shop.shop }),
    ...assemblies,
    ...stages,
    ...links,
  ]
}

/** Runs `work` on a yard of so many cars and on the plain handler with the same. */
export async function withRivals<T>(
  count: number,
  work: (rivals: Rivals) => Promise<T>,
  settings: RivalSettings = {},
): Promise<T> {
  const folder = mkdtempSync(join(tmpdir(), 'fettleyard-bench-'))
  chmodSync(folder, 0o711)
  const closers: (() => Promise<unknown>)[] = [
    async () => rmSync(folder, { recursive: true, force: true }),
  ]
  try {
    const postgres = await startPostgres(folder)
    closers.push(postgres.stop)
    const shop = aShopWithBay('bench')
    const names = Array.from({ length: count }, (_, n) => `car${n}`)
    const url = await aDatabaseOf(postgres.url, 'ours', async (pool) => {
      await plant(pool, [
        ...shop.entities,
        aMembership({ id: anId('mbr', 'onlooker'), shop: shop.shop, person: ONLOOKER }),
      ])
      for (const name of names) await plant(pool, aCar(name, shop))
    })
    const plainUrl = await copyOf(postgres.url, 'ours', 'plain')
    const projects = names.map((name) => anId('prj', name))
    const pool = aPool(url, 2)
    closers.push(() => pool.end())
    const server = await aServer({ DATABASE_URL: url, AUTH_SECRET: SECRET, ...settings.env })
    closers.push(server.remove)
    const port = Number(new URL(server.url).port)
    const cookie = await cookieOf(pool, shop.person)
    const origin = `http://127.0.0.1:${port}`
    const plain = await startPlain(plainUrl, settings.plain)
    closers.push(plain.stop)
    return await work({
      ours: {
        port,
        pid: server.process.pid ?? 0,
        next: ourRequests(postHead('/api/commands', { cookie, origin }), projects),
      },
      plain: { ...plain, next: plainRequests(postHead('/', {}), projects, shop.person) },
      projects,
      onlooker: await cookieOf(pool, ONLOOKER),
    })
  } finally {
    for (const close of closers.reverse()) await close()
  }
}

async function cookieOf(pool: pg.Pool, person: PersonId): Promise<string> {
  const at = Instant.parse(new Date().toISOString())
  const session = { person, issuedAt: at, proof: 'password', provedAt: at } as const
  const set = await openSessions(pool, SECRET, false).cookieFor(session)
  return set.split(';')[0] ?? ''
}

const nameIn = (project: ProjectId) => project.slice(4)

/** One press: an assembly is described anew. The record keeps its size, however long it is measured. */
function nextPress(projects: readonly ProjectId[]) {
  let sent = 0
  return () => {
    const project = projects[sent++ % projects.length] ?? anId('prj', 'car0')
    const assembly = anId('asm', `${nameIn(project)}x${sent % ASSEMBLIES}`)
    return { project, assembly, name: `Box of brightwork, press ${sent}`, pieces: 1 + (sent % 20) }
  }
}

function ourRequests(head: string, projects: readonly ProjectId[]): NextRequest {
  const next = nextPress(projects)
  return () => {
    const { assembly, name, pieces } = next()
    const input = { assembly, name, pieces }
    const press = { name: 'assembly.describe', input, key: freshKey() }
    return { head, body: JSON.stringify({ ...press, happenedAt: new Date().toISOString() }) }
  }
}

function plainRequests(
  head: string,
  projects: readonly ProjectId[],
  person: PersonId,
): NextRequest {
  const next = nextPress(projects)
  return () => {
    const press = { ...next(), key: freshKey(), person, at: new Date().toISOString() }
    return { head, body: JSON.stringify({ ...press, party: `pty_${nameIn(press.project)}` }) }
  }
}

async function aDatabaseOf(
  adminUrl: string,
  name: string,
  fill: (pool: pg.Pool) => Promise<void>,
): Promise<string> {
  await admin(adminUrl, `create database ${name}`)
  const url = new URL(adminUrl)
  url.pathname = `/${name}`
  await migrate(url.href)
  const pool = aPool(url.href, 2)
  await fill(pool)
  await pool.query('analyze')
  await pool.end()
  return url.href
}

async function copyOf(adminUrl: string, from: string, to: string): Promise<string> {
  await admin(adminUrl, `create database ${to} template ${from}`)
  const url = new URL(adminUrl)
  url.pathname = `/${to}`
  return url.href
}

async function admin(url: string, sql: string): Promise<void> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  await client.query(sql)
  await client.end()
}
