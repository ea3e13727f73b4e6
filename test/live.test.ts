import type pg from 'pg'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aDatabase, type TestDatabase } from './a-database.ts'
import {
  aBrowser,
  aYard,
  changesOf,
  following,
  heard,
  type TestSocket,
  type TestYard,
} from './a-yard.ts'
import { anId, engineShop, leadShop, project, shellId } from './builders.ts'
import { aPool, plant } from './plant.ts'
import { cast, personOf } from './see-cast.ts'
import { samples } from './see-samples.ts'

/** DESIGN: a grant or a removal is felt within this, in ms. */
const FELT_MS = 2000

let database: TestDatabase
let pool: pg.Pool
let yard: TestYard
/** A second node on the same database. */
let other: TestYard

const stage = anId('stg', 'fit')

beforeAll(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  await plant(pool, [...Object.values(samples), ...cast])
  yard = await aYard(database.url)
  other = await aYard(database.url)
})
afterAll(async () => {
  await yard.close()
  await other.close()
  await pool.end()
  await database.drop()
})

const versionNow = async (): Promise<number> => {
  const browser = await aBrowser(yard, personOf.lead)
  return (await (await browser.get(`/api/projects/${project}`)).json()).version
}
const write = async (text: string, over: object = {}): Promise<number> => {
  const engines = await aBrowser(yard, personOf.engines)
  const input = { on: stage, text, sharing: 'shared', ...over }
  const response = await engines.command('note.write', input, project)
  expect(await response.json()).toMatchObject({ changed: [{ record: project }] })
  return versionNow()
}
/** Ends when `done` holds; fails by its time. */
async function within(ms: number, done: () => boolean | Promise<boolean>): Promise<void> {
  const end = Date.now() + ms
  while (!(await done())) {
    if (Date.now() > end) throw new Error(`Not within ${ms} ms.`)
    await new Promise((resolve) => setTimeout(resolve, 20))
  }
}
const listen = async (at: TestYard, person: (typeof personOf)[keyof typeof personOf]) => {
  const socket = (await aBrowser(at, person)).socket()
  const changes = changesOf(socket)
  const version = await following(socket, project)
  return { socket, changes, version }
}

describe('a change, live', () => {
  it('reaches every view that may see it, on every node, with its step and who did it', async () => {
    const trim = await listen(yard, personOf.trim)
    const owner = await listen(other, personOf.owner)
    const version = await write('The block is back')
    for (const { socket, changes } of [trim, owner]) {
      const changed = await changes.until(version)
      expect(changed).toMatchObject({
        record: project,
        from: version - 1,
        to: version,
        entities: [{ kind: 'note', text: 'The block is back' }],
        doings: [{ person: personOf.engines, party: engineShop, command: 'note.write' }],
        people: { [personOf.engines]: 'Person bexmanager' },
      })
      socket.close()
    }
  })

  it('that a view may not see comes as an empty step, so that a gap always means a loss', async () => {
    const trim = await listen(yard, personOf.trim)
    const hand = await listen(other, personOf['engines hand'])
    const version = await write('Between us', { sharing: 'shop' })
    expect(await trim.changes.until(version)).toMatchObject({
      to: version,
      entities: [],
      stubs: [],
      people: {},
      doings: [],
    })
    expect(await hand.changes.until(version)).toMatchObject({ entities: [{ text: 'Between us' }] })
    trim.socket.close()
    hand.socket.close()
  })

  it('tells nobody of a press whose things they may not see, though it travels with another', async () => {
    const trim = await listen(yard, personOf.trim)
    const engines = await aBrowser(yard, personOf.engines)
    const notes = ['shop', 'shared'].map((sharing) => ({ on: stage, text: sharing, sharing }))
    await Promise.all(notes.map((note) => engines.command('note.write', note, project)))
    await trim.changes.until(await versionNow())
    const steps = trim.changes.all
    expect(steps.flatMap(({ entities }) => entities)).toHaveLength(1)
    expect(steps.flatMap(({ doings }) => doings)).toHaveLength(1)
    trim.socket.close()
  })

  it('is not sent to who follows no longer', async () => {
    const trim = await listen(yard, personOf.trim)
    trim.socket.emit('unwatch', project)
    const owner = await listen(yard, personOf.owner)
    await owner.changes.until(await write('Nobody here from trim'))
    expect(trim.changes.all).toEqual([])
    trim.socket.close()
    owner.socket.close()
  })

  it('of ten presses in a row reaches a screen whole and in order', async () => {
    const owner = await listen(yard, personOf.owner)
    const engines = await aBrowser(yard, personOf.engines)
    const texts = Array.from({ length: 10 }, (_, i) => `Press ${i}`)
    await Promise.all(
      texts.map((text) =>
        engines.command('note.write', { on: shellId, text, sharing: 'shared' }, project),
      ),
    )
    const version = await versionNow()
    await owner.changes.until(version)
    const steps = owner.changes.all
    expect(steps.slice(1).map(({ from }) => from)).toEqual(steps.slice(0, -1).map(({ to }) => to))
    const seen = steps.flatMap(({ entities }) => entities)
    const seenTexts = seen.flatMap((entity) => (entity.kind === 'note' ? [entity.text] : []))
    expect(seenTexts.sort()).toEqual(texts)
    owner.socket.close()
  })
})

describe('access', () => {
  it('granted to a person shows within two seconds, on another node too', async () => {
    const manager = await aBrowser(yard, personOf.lead)
    const person = anId('psn', 'newcomer')
    await pool.query(
      `insert into "Person" ("id", "name", "email") values ('psn_newcomer', 'Wren', 'wren@yard.example')`,
    )
    const newcomer = await aBrowser(other, person)
    const socket = newcomer.socket()
    await heard(socket, 'connect')
    const access = new Promise<string>((told) => socket.on('access', ({ record }) => told(record)))
    expect((await newcomer.get(`/api/projects/${project}`)).status).toBe(404)
    const owner = await listen(other, personOf.owner)
    const before = (await (await asOwner(other)).json()).epoch

    await manager.command('membership.add', { person, role: 'hand' }, leadShop)
    await within(
      FELT_MS,
      async () => (await newcomer.get(`/api/projects/${project}`)).status === 200,
    )
    expect(await access).toBe(leadShop)
    expect(await following(socket, project)).toBeGreaterThan(0)
    expect((await (await asOwner(other)).json()).epoch).toBe(before)
    owner.socket.close()
    socket.close()
  })

  it('taken away ends sessions and sockets within two seconds, on every node', async () => {
    const manager = await aBrowser(yard, personOf.lead)
    const hand = await aBrowser(other, personOf['lead hand'])
    const sockets: TestSocket[] = [
      hand.socket(),
      (await aBrowser(yard, personOf['lead hand'])).socket(),
    ]
    for (const socket of sockets) expect(await following(socket, project)).toBeGreaterThan(0)
    expect((await hand.get('/api/me')).status).toBe(200)

    const gone = Promise.all(sockets.map((socket) => heard(socket, 'disconnect')))
    const began = Date.now()
    const removed = await manager.command('membership.remove', { membership: anId('mbr', 'tom') })
    expect(removed.status).toBe(200)
    await gone
    await within(FELT_MS, async () => (await hand.get('/api/me')).status === 401)
    expect(Date.now() - began).toBeLessThan(FELT_MS)
    const again = await aBrowser(yard, personOf['lead hand'])
    expect((await again.get(`/api/projects/${project}`)).status).toBe(404)
  })

  it('of a party that comes raises the epoch of those who look on, so that they fetch anew', async () => {
    const owner = await listen(other, personOf.owner)
    const before = (await (await asOwner(other)).json()).epoch
    const manager = await aBrowser(yard, personOf.lead)
    await manager.command('party.add', { name: 'Quill Electrical', role: 'shop' }, project)
    const changed = await owner.changes.until(await versionNow())
    expect(changed.epoch).toBeGreaterThan(before)
    owner.socket.close()
  })

  it('of a shop to another car is told to who has its book open', async () => {
    const hand = (await aBrowser(other, personOf.lead)).socket()
    expect(await following(hand, leadShop)).toBeGreaterThan(0)
    const told: string[] = []
    hand.on('access', ({ record }) => told.push(record))
    const manager = await aBrowser(yard, personOf.lead)
    const made = await manager.command(
      'project.create',
      { shop: leadShop, name: 'Dunmore saloon', year: 1934 },
      leadShop,
    )
    const { changed } = await made.json()
    const car: string = changed[0].record
    await within(FELT_MS, () => told.includes(car) && told.includes(leadShop))
    hand.close()
  })

  it('by a role that was changed shows other figures on the open page', async () => {
    const manager = await aBrowser(yard, personOf.engines)
    const hand = await listen(other, personOf['engines hand'])
    const access = new Promise<string>((told) =>
      hand.socket.on('access', ({ record }) => told(record)),
    )
    const membership = anId('mbr', 'bexhand')
    const changed = await manager.command('membership.change', { membership, role: 'manager' })
    expect(changed.status).toBe(200)
    expect(await access).toBe(project)
    const line = samples['change line of engines']
    const browser = await aBrowser(other, personOf['engines hand'])
    await within(FELT_MS, async () => {
      const view = await (await browser.get(`/api/projects/${project}`)).json()
      return view.entities.some(({ id }: { id: string }) => id === line?.id)
    })
    const version = await write('Priced', { sharing: 'shared' })
    expect((await hand.changes.until(version)).to).toBe(version)
    hand.socket.close()
  })

  it('signed out everywhere ends every open page of that person', async () => {
    const browser = await aBrowser(yard, personOf.insurer)
    const elsewhere = await aBrowser(other, personOf.insurer)
    const socket = elsewhere.socket()
    expect(await following(socket, project)).toBeGreaterThan(0)
    const gone = heard(socket, 'disconnect')
    expect((await browser.post('/api/sign-out-everywhere', {})).status).toBe(200)
    await gone
    await within(FELT_MS, async () => (await elsewhere.get('/api/me')).status === 401)
    expect((await browser.get('/api/me')).status).toBe(401)
  })
})

const asOwner = async (at: TestYard): Promise<Response> =>
  (await aBrowser(at, personOf.owner)).get(`/api/projects/${project}`)
