import type pg from 'pg'
import { beforeEach, describe, expect, it } from 'vitest'
import type { DemoProgress, FirstShop, Installation } from '../lib/command/wire-access.ts'
import { idsFrom } from '../lib/record/ids.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { type Demonstration, openDemonstration } from '../lib/server/installation/demonstration.ts'
import { pageFunctions } from '../lib/server/page-functions.ts'
import type { LoadDemonstration } from '../seed/seam.ts'
import { aDatabase, type TestDatabase } from './a-database.ts'
import { aBrowser, aYard, browserWith, type TestYard } from './a-yard.ts'
import { aPool } from './plant.ts'

let database: TestDatabase
let pool: pg.Pool
let yard: TestYard

beforeEach(async () => {
  database = await aDatabase()
  pool = aPool(database.url)
  yard = await aYard(database.url)
  return async () => {
    await yard.close()
    await pool.end()
    await database.drop()
  }
})

const visitor = () => browserWith(yard.url, '')
const installation = async (): Promise<Installation> =>
  (await visitor().get('/api/installation')).json()
const first = (over: Partial<FirstShop> = {}): FirstShop => ({
  shop: 'Tarn Lane Coachworks',
  currency: 'GBP',
  timeZone: 'Europe/London',
  taxRegistered: true,
  taxRate: 2000,
  name: 'Ruth Tarn',
  email: 'ruth@tarnlane.example',
  password: 'lead and long boards',
  ...over,
})

describe('the first visit', () => {
  it('finds an empty installation, creates the shop with its manager and signs them in', async () => {
    expect(await installation()).toEqual({
      empty: true,
      demoOffered: true,
      demoPersons: [],
      demoPhone: null,
      mail: false,
    })
    const created = await visitor().post('/api/installation/shop', first())
    expect(await created.json()).toMatchObject({
      person: { name: 'Ruth Tarn', email: 'ruth@tarnlane.example' },
      shops: [{ name: 'Tarn Lane Coachworks', role: 'manager' }],
      provedUntil: expect.any(String),
      demo: false,
    })
    const cookie = created.headers.get('set-cookie')?.split(';')[0] ?? ''
    expect((await browserWith(yard.url, cookie).get('/api/me')).status).toBe(200)
    expect(await installation()).toMatchObject({ empty: false, demoOffered: false })
    const { rows } = await pool.query(`select "passwordHash" from "Person"`)
    expect(rows[0].passwordHash).toMatch(/^\$argon2id\$/)
  })

  it('of five people at once lets exactly one set it up', async () => {
    const answers = await Promise.all(
      [1, 2, 3, 4, 5].map((n) =>
        visitor().post('/api/installation/shop', first({ email: `p${n}@tarnlane.example` })),
      ),
    )
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 409, 409, 409, 409])
    const { rows } = await pool.query(
      'select (select count(*)::int from "Shop") as shops, (select count(*)::int from "Person") as people',
    )
    expect(rows[0]).toEqual({ shops: 1, people: 1 })
  })

  it('names the field that is wrong, and keeps nothing', async () => {
    const wrong: [Partial<FirstShop>, string][] = [
      [{ password: 'short' }, 'password'],
      [{ email: 'nowhere' }, 'email'],
      [{ currency: 'pounds' }, 'currency'],
      [{ timeZone: 'Mars/Olympus' }, 'timeZone'],
      [{ taxRate: 20_000 }, 'taxRate'],
      [{ shop: ' ' }, 'shop'],
    ]
    for (const [over, field] of wrong) {
      const answer = await visitor().post('/api/installation/shop', first(over))
      expect(answer.status).toBe(400)
      expect(await answer.json()).toMatchObject({ error: { field } })
    }
    expect(await installation()).toMatchObject({ empty: true })
    expect((await pool.query('select from "Person"')).rowCount).toBe(0)
  })
})

/** A shop and a car: as small as a demonstration can be, played as the real one is. */
const small: LoadDemonstration = async ({ person, play, progress, now }) => {
  const ruth = await person('Ruth Tarn', 'ruth@tarnlane.example')
  const key = freshKey()
  const shop = idsFrom(key)('shp')
  const input = {
    name: 'Tarn Lane',
    currency: 'GBP',
    timeZone: 'Europe/London',
    taxRegistered: false,
    demo: true,
  }
  await play({ person: ruth, name: 'shop.create', input, key, at: now })
  progress(1, 2, 'The shop is open')
  const car = { shop, name: 'Averley Three-Litre', owner: 'Ines Halloran' }
  await play({ person: ruth, name: 'project.create', input: car, key: freshKey(), at: now })
}
const broken: LoadDemonstration = async (stage) => {
  await small(stage)
  throw new Error('It breaks half-way.')
}

describe('the demonstration', () => {
  const opened = (load: LoadDemonstration): Demonstration => {
    const { commands, env } = yard.doors
    return openDemonstration(
      yard.doors,
      commands.enter,
      env.dataDir,
      async () => load,
      async () => {},
      commands.forget,
    )
  }
  async function settled(demonstration: Demonstration): Promise<DemoProgress> {
    for (;;) {
      const progress = await demonstration.progress()
      if (progress.state !== 'loading') return progress
      await new Promise((resolve) => setTimeout(resolve, 10))
    }
  }

  it('is loaded while nothing else exists, signs in by one press, and goes as a whole', async () => {
    const demonstration = opened(small)
    expect(await demonstration.load()).toBe(true)
    expect(await settled(demonstration)).toMatchObject({ state: 'loaded' })
    const { demoPersons, demoOffered } = await installation()
    expect(demoOffered).toBe(false)
    expect(demoPersons).toMatchObject([
      { name: 'Ruth Tarn', at: 'manager of Tarn Lane', role: 'manager' },
    ])
    const [ruth] = demoPersons
    if (ruth === undefined) throw new Error('Nobody is there.')
    const pages = pageFunctions(yard.doors)
    expect(await pages.demonstration()).toEqual({ doors: true })
    expect(await yard.doors.signIn.asDemo(ruth.id)).toMatchObject({ proof: 'demonstration' })
    expect(await demonstration.load()).toBe(false)

    const browser = await aBrowser(yard, ruth.id)
    expect(await (await browser.get('/api/me')).json()).toMatchObject({ demo: true })
    expect((await browser.post('/api/installation/remove-demo', {})).status).toBe(200)
    expect(await installation()).toMatchObject({ empty: true, demoPersons: [] })
    expect(await pages.demonstration()).toBeNull()
    expect((await browser.get('/api/me')).status).toBe(401)
    expect((await pool.query('select from "JournalEntry"')).rowCount).toBe(0)
    // The guard of the journal is on again.
    expect(await demonstration.load()).toBe(true)
    await settled(demonstration)
    await expect(pool.query('delete from "JournalEntry"')).rejects.toThrow('never rewritten')
  })

  it('that breaks half-way leaves nothing behind, and says so', async () => {
    const demonstration = opened(broken)
    await demonstration.load()
    expect(await settled(demonstration)).toMatchObject({ state: 'failed' })
    expect(await installation()).toMatchObject({ empty: true })
  })

  it('stays while there is a shop or a car of somebody beside it', async () => {
    const demonstration = opened(small)
    await demonstration.load()
    await settled(demonstration)
    await pool.query(`update "Project" set "demo" = false`)
    expect(await demonstration.remove()).toBe(false)
    expect((await pool.query('select from "Project"')).rowCount).toBe(1)
  })

  it('is not for others than this machine, unless a setting says so', async () => {
    const beyond = { HOST: '0.0.0.0', PUBLIC_URL: 'https://yard.example' }
    const far = await aYard(database.url, beyond)
    expect(far.doors.demoDoors).toBe(false)
    await far.close()
    const proxied = await aYard(database.url, { PUBLIC_URL: 'https://yard.example' })
    expect(proxied.doors.demoDoors).toBe(false)
    await proxied.close()
    const allowed = await aYard(database.url, { ...beyond, DEMO_DOORS: 'yes' })
    expect(allowed.doors.demoDoors).toBe(true)
    await allowed.close()
  })
})
