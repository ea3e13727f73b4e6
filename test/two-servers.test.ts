import type pg from 'pg'
import { io } from 'socket.io-client'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { RecordId } from '../lib/journal/journal-entry.ts'
import type { PersonId, ProjectId } from '../lib/record/ids.ts'
import { Instant } from '../lib/record/scalars.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { openSessions, type Sessions } from '../lib/server/people/session.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import { aServer, type TestServer } from './a-server.ts'
import { changesOf, following, type TestSocket } from './a-yard.ts'
import { anId } from './builders.ts'
import { aPool, journalAgainstTables } from './plant.ts'
import { busy, cars, contested, host, plantGround, rivals, span } from './race-ground.ts'

const CLIENTS = 20
const PRESSES = 10
/** A move is seen by the others within this, in ms. */
const SEEN_MS = 500
const SECRET = 'the secret of both servers, which is long enough'

let database: TestDatabase
let pool: pg.Pool
let sessions: Sessions
let servers: readonly TestServer[] = []

beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url, 4)
  await plantGround(pool)
  sessions = openSessions(pool, SECRET, false)
  const settings = { DATABASE_URL: database.url, AUTH_SECRET: SECRET }
  servers = await Promise.all([aServer(settings), aServer(settings)])
})
afterAll(async () => {
  await Promise.all(servers.map((server) => server.remove()))
  await pool.end()
  await database.drop()
})

const serverAt = (n: number): TestServer => {
  const server = servers[n % servers.length]
  if (server === undefined) throw new Error('There is no server.')
  return server
}
async function cookieOf(person: PersonId): Promise<string> {
  const at = Instant.parse(new Date().toISOString())
  const session = { person, issuedAt: at, proof: 'password', provedAt: at } as const
  return (await sessions.cookieFor(session)).split(';')[0] ?? ''
}
interface Press {
  readonly person: PersonId
  readonly project: ProjectId
  readonly name: string
  readonly input: object
  readonly key?: string
}
/** The n-th press goes to the servers by turns. */
async function send(n: number, { person, project, key = freshKey(), ...press }: Press) {
  const { url } = serverAt(n)
  const response = await fetch(`${url}/api/commands`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      origin: url,
      cookie: await cookieOf(person),
    },
    body: JSON.stringify({
      ...press,
      key,
      happenedAt: new Date().toISOString(),
      expected: { [project]: 1 },
    }),
  })
  return { status: response.status, body: await response.json() }
}
async function holdsByteForByte(id: RecordId) {
  const { verified, tables, replayed, entries } = await journalAgainstTables(pool, id)
  expect(verified).toMatchObject({ holds: true, missingParts: 0 })
  expect(replayed).toBe(tables)
  return entries
}
const addTo = (name: string, key?: string): Press => ({
  person: host.person,
  project: busy,
  name: 'assembly.add',
  input: { name, pieces: 1, custodian: anId('pty', 'busy') },
  ...(key !== undefined && { key }),
})

describe('two servers on one database', () => {
  it('let one of fifty shops have the shell, each claiming it for its own bay', async () => {
    const answers = await Promise.all(
      rivals.map(({ shop, bay, person }, n) => {
        const input = { assembly: anId('asm', 'contested'), bay, shop, ...span }
        return send(n, { person, project: contested, name: 'slot.claim', input })
      }),
    )
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1)
    for (const { body } of answers.filter(({ status }) => status !== 200)) {
      expect(body).toMatchObject({
        conditions: [{ rule: 'slot-taken', what: 'assembly', ...span }],
      })
    }
    await holdsByteForByte(contested)
    for (const { shop } of rivals) await holdsByteForByte(shop)
  })

  it('let one of fifty cars have the one bay', async () => {
    const answers = await Promise.all(
      cars.map((car, n) => {
        const input = { assembly: anId('asm', car), bay: host.bay, shop: host.shop, ...span }
        return send(n, {
          person: host.person,
          project: anId('prj', car),
          name: 'slot.claim',
          input,
        })
      }),
    )
    expect(answers.filter(({ status }) => status === 200)).toHaveLength(1)
    for (const { body } of answers.filter(({ status }) => status !== 200)) {
      expect(body).toMatchObject({
        conditions: [{ rule: 'slot-taken', what: 'bay', bay: host.bay }],
      })
    }
    await holdsByteForByte(host.shop)
    for (const car of cars) await holdsByteForByte(anId('prj', car))
  })

  it('lose none of 200 commands of twenty clients, and double none', async () => {
    const client = async (n: number) => {
      const names: string[] = []
      for (let press = 0; press < PRESSES; press++) {
        const name = `Piece ${n}.${press}`
        const { status, body } = await send(n + press, addTo(name))
        expect(status, JSON.stringify(body)).toBe(200)
        names.push(name)
      }
      return names
    }
    const names = (await Promise.all(Array.from({ length: CLIENTS }, (_, n) => client(n)))).flat()
    const { rows } = await pool.query<{ name: string }>(
      `select "name" from "Assembly" where "project" = $1 and "name" like 'Piece %'`,
      [busy],
    )
    expect(rows.map(({ name }) => name).sort()).toEqual(names.sort())
    const entries = await holdsByteForByte(busy)
    expect(entries.map(({ sequence }) => sequence)).toEqual(entries.map((_, n) => n + 1))
    expect(entries).toHaveLength(CLIENTS * PRESSES + 1)
  })

  it('carry out a key once that comes ten times, five times to each', async () => {
    const press = addTo('Only once', freshKey())
    const answers = await Promise.all(Array.from({ length: 10 }, (_, n) => send(n, press)))
    expect(answers.map(({ status }) => status)).toEqual(answers.map(() => 200))
    const [first] = answers
    for (const { body } of answers) {
      expect(body.changed[0].entities).toEqual(first?.body.changed[0].entities)
      expect(body.changed[0].to).toBe(first?.body.changed[0].to)
    }
    const entries = await holdsByteForByte(busy)
    expect(entries.filter(({ key }) => key === press.key)).toHaveLength(1)
  })

  it('show a press on one to a socket on the other, within half a second', async () => {
    const { url } = serverAt(1)
    const headers = { cookie: await cookieOf(host.person), origin: url }
    const socket: TestSocket = io(url, { transports: ['websocket'], extraHeaders: headers })
    const changes = changesOf(socket)
    const version = await following(socket, busy)
    const began = performance.now()
    const { body } = await send(0, addTo('Seen on the other'))
    const changed = await changes.until(body.changed[0].to)
    const took = performance.now() - began
    socket.close()
    expect(changed).toMatchObject({
      from: version,
      entities: [{ kind: 'assembly', name: 'Seen on the other' }],
    })
    expect(took).toBeLessThan(SEEN_MS)
  })
})
