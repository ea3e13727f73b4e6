import { spawnSync } from 'node:child_process'
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { CODE_HEADER, PERSON_HEADER } from '../lib/command/person-header.ts'
import type { Changed, JournalPage, Me, ProjectView } from '../lib/command/wire.ts'
import type { HandedLink } from '../lib/command/wire-access.ts'
import type { DeviceHere, OnceCode, ShopPhones } from '../lib/command/wire-device.ts'
import type { PersonId } from '../lib/record/ids.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import {
  aBrowser,
  type Browser,
  browserWith,
  changesOf,
  following,
  heard,
  type TestYard,
} from './a-yard.ts'
import { anId, aProject, lead, leadShop, project } from './builders.ts'
import { journalAgainstTables } from './plant.ts'
import { personOf } from './see-cast.ts'

const tom = personOf['lead hand']
const ruth = personOf.lead
const elsewhere = anId('prj', 'elsewhere')

let planted: PlantedYard
let yard: TestYard
let manager: Browser
let phone: Browser
let phoneId: string

beforeAll(async () => {
  planted = await aPlantedYard(aProject({ id: elsewhere, name: 'A car of another yard' }))
  yard = planted.yard
  manager = await aBrowser(yard, ruth)
  ;({ phone, id: phoneId } = await aPhone('Paint bay phone'))
})
afterAll(() => planted.close())

const cookieOf = (response: Response): string =>
  response.headers
    .getSetCookie()
    .flatMap((cookie) => cookie.split(';')[0] ?? [])
    .filter((pair) => !pair.endsWith('='))
    .join('; ')

/** The manager's own browser, made a phone of the shop. */
async function aPhone(name: string): Promise<{ readonly phone: Browser; readonly id: string }> {
  const browser = await aBrowser(yard, ruth)
  const made = await browser.post(`/api/shops/${leadShop}/devices`, { name, here: true })
  expect(made.status).toBe(201)
  return { phone: browserWith(yard.url, cookieOf(made)), id: (await made.json()).id }
}

/** A press on the phone, by whom it says. */
const press = (
  on: Browser,
  by: PersonId | undefined,
  name: string,
  input: unknown,
  { code, key = freshKey() }: { readonly code?: string; readonly key?: string } = {},
): Promise<Response> =>
  fetch(`${yard.url}/api/commands`, {
    method: 'POST',
    headers: {
      cookie: on.cookie,
      origin: yard.url,
      'content-type': 'application/json',
      ...(by !== undefined && { [PERSON_HEADER]: by }),
      ...(code !== undefined && { [CODE_HEADER]: code }),
    },
    body: JSON.stringify({
      name,
      input,
      key,
      happenedAt: new Date().toISOString(),
      expected: { [project]: 2 ** 31 },
    }),
  })

/** A stage of the lead's, in work since a moment ago. */
async function aStageInWork(name: string): Promise<string> {
  const added: { changed: Changed[] } = await (
    await manager.command('stage.add', { name, party: lead }, project)
  ).json()
  const stage = added.changed[0]?.entities.find(({ kind }) => kind === 'stage')?.id ?? ''
  expect((await press(phone, tom, 'stage.start', { stage })).status).toBe(200)
  return stage
}
const signOff = (stage: string) => ({ stage, end: { endedAt: new Date().toISOString() } })

async function ownCode(person: PersonId, code: string): Promise<void> {
  const set = await (await aBrowser(yard, person)).post(`/api/my-codes/${leadShop}`, { code })
  expect(set.status).toBe(200)
}

describe('a phone of the shop', () => {
  it('is nobody’s: it is its shop’s hand, and the manager who made it one is out of that browser', async () => {
    const me: Me = await (await phone.get('/api/me')).json()
    expect(me).toMatchObject({
      device: { name: 'Paint bay phone', shop: leadShop },
      shops: [{ id: leadShop, role: 'hand' }],
      provedUntil: null,
    })
    expect(me.projects.map(({ id }) => id)).toEqual([project])
    const made = await (await aBrowser(yard, ruth)).post(`/api/shops/${leadShop}/devices`, {
      name: 'Trim bench phone',
      here: true,
    })
    const cookies = made.headers.getSetCookie()
    expect(cookies.some((one) => /^next-auth.session-token=;.*Max-Age=0/.test(one))).toBe(true)
    const own = cookies.find((one) => one.startsWith('fettleyard-device='))
    expect(own).toMatch(/; HttpOnly; SameSite=Lax; Max-Age=34560000$/)
    const { rows } = await planted.pool.query('select "tokenHash" from "ShopDevice"')
    for (const { tokenHash } of rows) expect(own).not.toContain(tokenHash)
  })

  it('shows no money, whoever works at it, and no other shop’s car', async () => {
    const view: ProjectView = await (await phone.get(`/api/projects/${project}`)).json()
    expect(view.view).toEqual({ party: lead, role: 'hand' })
    const kinds = new Set(view.entities.map(({ kind }) => kind))
    for (const kind of ['estimateLine', 'changeLine']) expect([...kinds]).not.toContain(kind)
    for (const one of view.entities) if (one.kind === 'part') expect(one.price).toBeNull()
    expect((await phone.get(`/api/projects/${elsewhere}`)).status).toBe(404)
    expect((await phone.get(`/api/shops/${anId('shp', 'engines')}`)).status).toBe(404)
    expect((await phone.get(`/api/shops/${leadShop}/day-sheet`)).status).toBe(200)
  })

  it('opens nothing that is a person’s own, or a manager’s', async () => {
    for (const path of [`/api/shops/${leadShop}/devices`, '/api/my-codes']) {
      expect((await phone.get(path)).status, path).toBe(401)
    }
    for (const path of ['/api/prove', '/api/sign-out-everywhere', '/api/invitations']) {
      expect((await phone.post(path, {})).status, path).toBe(401)
    }
    const forTheHand = await aBrowser(yard, tom)
    expect((await forTheHand.get(`/api/shops/${leadShop}/devices`)).status).toBe(403)
    const body = { name: 'My own', here: true }
    expect((await forTheHand.post(`/api/shops/${leadShop}/devices`, body)).status).toBe(403)
    const foreign = await aBrowser(yard, personOf.engines)
    expect((await foreign.post(`/api/shops/${leadShop}/devices`, body)).status).toBe(404)
  })

  it('refuses a change that another site sends', async () => {
    const sent = await fetch(`${yard.url}/api/device/leave`, {
      method: 'POST',
      headers: {
        cookie: phone.cookie,
        origin: 'https://elsewhere.example',
        'content-type': 'application/json',
      },
      body: '{}',
    })
    expect(sent.status).toBe(403)
    expect((await phone.get('/api/device')).status).toBe(200)
  })

  it('isn’t another shop’s manager’s to take out, nor is the link that brings it in', async () => {
    const body = { name: 'Parts room phone', here: false }
    const link: HandedLink = await (
      await manager.post(`/api/shops/${leadShop}/devices`, body)
    ).json()
    const { devices }: ShopPhones = await (
      await manager.get(`/api/shops/${leadShop}/devices`)
    ).json()
    const id = devices.find(({ name }) => name === body.name)?.id
    const other = await aBrowser(yard, personOf.engines)
    const out = `/api/shops/${anId('shp', 'engines')}/devices/${id}/revoke`
    expect((await other.post(out, {})).status).toBe(404)
    const token = new URL(link.url).pathname.replace('/phone/', '')
    const nobody = browserWith(yard.url, '')
    expect((await nobody.get(`/api/phone-links/${token}`)).status).toBe(200)
  })

  it('comes in by a link that works once', async () => {
    const body = { name: 'Metal shop phone', here: false }
    const link: HandedLink = await (
      await manager.post(`/api/shops/${leadShop}/devices`, body)
    ).json()
    expect(link.qr).toContain('<svg')
    const token = new URL(link.url).pathname.replace('/phone/', '')
    const nobody = browserWith(yard.url, '')
    expect(await (await nobody.get(`/api/phone-links/${token}`)).json()).toMatchObject({
      name: 'Metal shop phone',
      shopName: 'Tarn Lane Coachworks',
    })
    const brought = await nobody.post(`/api/phone-links/${token}`, {})
    expect(brought.status).toBe(200)
    const metal = browserWith(yard.url, cookieOf(brought))
    expect(await (await metal.get('/api/device')).json()).toMatchObject({
      name: 'Metal shop phone',
    })
    expect((await nobody.post(`/api/phone-links/${token}`, {})).status).toBe(404)
    const again = await manager.post(`/api/shops/${leadShop}/devices`, body)
    expect(await again.json()).toMatchObject({ error: { field: 'name' } })
  })
})

describe('a press on the shop’s phone', () => {
  const note = (text: string) => ({ on: project, text, sharing: 'shared' })

  it('asks first who works there, and takes nobody of another shop', async () => {
    expect(
      await (await press(phone, undefined, 'note.write', note('Whose?'))).json(),
    ).toMatchObject({ needs: 'hand' })
    const foreign = await press(phone, personOf.engines, 'note.write', note('Mine'))
    expect(foreign.status).toBe(403)
    expect(await foreign.json()).toMatchObject({ needs: 'hand' })
    const { hands }: DeviceHere = await (await phone.get('/api/device')).json()
    const here = hands.map(({ person }) => person)
    expect(here).toEqual(expect.arrayContaining([ruth, tom]))
    expect(here).not.toContain(personOf.engines)
  })

  it('is the hand’s, and the journal names the person and the phone', async () => {
    expect((await press(phone, tom, 'note.write', note('Two coats on'))).status).toBe(200)
    expect((await press(phone, ruth, 'note.write', note('And a third'))).status).toBe(200)
    const page: JournalPage = await (
      await manager.get(`/api/projects/${project}/journal?command=note.write&limit=2`)
    ).json()
    expect(page.entries).toMatchObject([
      { person: ruth, role: 'hand', device: 'Paint bay phone' },
      { person: tom, role: 'hand', device: 'Paint bay phone' },
    ])
    const own = await manager.command('note.write', note('From my own'), project)
    expect(own.status).toBe(200)
    const last: JournalPage = await (
      await manager.get(`/api/projects/${project}/journal?limit=1`)
    ).json()
    expect(last.entries).toMatchObject([{ person: ruth, role: 'manager', device: null }])
  })

  it('leaves a journal that verifies, replays and holds for a script that isn’t ours', async () => {
    const { entries, verified, tables, replayed } = await journalAgainstTables(
      planted.pool,
      project,
    )
    expect(entries.filter(({ device }) => device !== undefined).length).toBeGreaterThan(1)
    expect(entries.filter(({ device }) => device === undefined).length).toBeGreaterThan(1)
    expect(verified).toMatchObject({ holds: true })
    expect(replayed).toBe(tables)
    const folder = mkdtempSync(join(tmpdir(), 'fettleyard-journal-'))
    const check = (journal: unknown) => {
      const file = join(folder, 'journal.json')
      writeFileSync(file, JSON.stringify(journal))
      return spawnSync(process.execPath, ['test/verify-independently.mjs', file]).status
    }
    expect(check(entries)).toBe(0)
    // Whose phone it was can't be changed afterwards, nor left out.
    const forged = entries.map(({ device, ...entry }) => entry)
    expect(check(forged)).toBe(1)
    rmSync(folder, { recursive: true })
  })

  it('doesn’t go out where by now somebody else is signed in as themselves', async () => {
    expect((await press(manager, tom, 'note.write', note('Not mine'))).status).toBe(401)
  })
})

describe('a signature on the shop’s phone', () => {
  it('takes the hand’s own code, and nothing less', async () => {
    const stage = await aStageInWork('Flat back the primer')
    const first = await press(phone, tom, 'stage.signOff', signOff(stage))
    expect(first.status).toBe(403)
    expect(await first.json()).toMatchObject({ needs: 'first code' })
    await ownCode(tom, '480713')
    const none = await press(phone, tom, 'stage.signOff', signOff(stage))
    expect(await none.json()).toMatchObject({ needs: 'code' })
    const wrong = await press(phone, tom, 'stage.signOff', signOff(stage), { code: '480714' })
    expect(await wrong.json()).toMatchObject({ needs: 'right code' })
    const anothers = await press(phone, ruth, 'stage.signOff', signOff(stage), { code: '480713' })
    expect(await anothers.json()).toMatchObject({ needs: 'first code' })

    const key = freshKey()
    const input = signOff(stage)
    const right = await press(phone, tom, 'stage.signOff', input, { key, code: '480713' })
    expect(right.status).toBe(200)
    const { changed }: { changed: Changed[] } = await right.json()
    const signs = changed.flatMap(({ entities }) => entities).filter((e) => e.kind === 'signOff')
    expect(signs).toMatchObject([{ person: tom, type: 'sign-off' }])
    // The answer was lost: the same press again needs no code, and signs nothing twice.
    const again = await press(phone, tom, 'stage.signOff', input, { key })
    expect(again.status).toBe(200)
    const { rows } = await planted.pool.query('select from "SignOff" where "stage" = $1', [stage])
    expect(rows.length).toBe(1)
  })

  it('is kept nowhere: neither its journal nor the answer to its key has the code', async () => {
    const { rows } = await planted.pool.query<{ text: string }>(
      `select to_jsonb(j)::text as text from "JournalEntry" j union all select to_jsonb(k)::text from "IdempotencyKey" k
       union all select to_jsonb(h)::text from "HandCode" h`,
    )
    expect(rows.length).toBeGreaterThan(5)
    for (const { text } of rows) expect(text).not.toContain('"480713"')
  })

  it('a yes of the owner’s kind isn’t given on it at all', async () => {
    const yes = { changeOrder: anId('cho', 'carburettors'), shownHash: 'ab'.repeat(32) }
    const answer = await press(phone, ruth, 'changeOrder.approve', yes, { code: '480713' })
    expect(await answer.json()).toMatchObject({ needs: 'own session' })
  })

  it('with wrong codes is stopped for a while, on that phone, for that hand', async () => {
    const { phone: bench } = await aPhone('Bench phone')
    const stage = await aStageInWork('Block sand')
    const tryIt = (by: PersonId, code: string) =>
      press(bench, by, 'stage.signOff', signOff(stage), { code })
    for (let n = 0; n < 5; n++) expect((await tryIt(tom, `5${n}81`)).status).toBe(403)
    const stopped = await tryIt(tom, '480713')
    expect(stopped.status).toBe(429)
    expect(Number(stopped.headers.get('retry-after'))).toBeLessThanOrEqual(300)
    expect(await stopped.json()).toMatchObject({ error: { message: /Wait \d+ minutes/ } })
    // Elsewhere they sign on, and a press that is no signature goes its way here as well.
    const pause = await press(bench, tom, 'stage.pause', { stage })
    expect(pause.status).toBe(200)
    const there = await press(phone, tom, 'stage.signOff', signOff(stage), { code: '480713' })
    expect(there.status).toBe(200)
  })
})

describe('a hand’s code', () => {
  it('is refused where everybody would try it first, with why', async () => {
    const hand = await aBrowser(yard, tom)
    const set = (code: string) => hand.post(`/api/my-codes/${leadShop}`, { code })
    for (const [code, why] of [
      ['0000', /same digit/],
      ['1234', /in a row/],
      ['1212', /pair/],
      ['12', /4 to 8 digits/],
    ] as const) {
      const answer = await set(code)
      expect(answer.status).toBe(400)
      expect(await answer.json()).toMatchObject({ error: { field: 'code', message: why } })
    }
    expect(
      (await hand.post(`/api/my-codes/${anId('shp', 'engines')}`, { code: '4807' })).status,
    ).toBe(404)
  })

  it('is set at the phone with one that a manager shows, which works once; the manager reads none', async () => {
    const path = `/api/shops/${leadShop}/hands/${ruth}/code`
    const { once }: OnceCode = await (await manager.post(path, {})).json()
    expect(once).toMatch(/^\d{6}$/)
    const set = (said: object) => phone.post('/api/device/code', { person: ruth, ...said })
    expect((await set({ once: '000000', code: '91746' })).status).toBe(403)
    expect((await set({ once, code: '1111' })).status).toBe(400)
    expect((await set({ once, code: '91746' })).status).toBe(200)
    expect((await set({ once, code: '91747' })).status).toBe(403)
    const listed: ShopPhones = await (await manager.get(`/api/shops/${leadShop}/devices`)).json()
    expect(listed.hands.find(({ person }) => person === ruth)).toMatchObject({ hasCode: true })
    expect(JSON.stringify(listed)).not.toMatch(/Hash|91746/)
    const stage = await aStageInWork('Guide coat')
    const signed = await press(phone, ruth, 'stage.signOff', signOff(stage), { code: '91746' })
    expect(signed.status).toBe(200)
  })

  it('that a manager resets opens nothing any more', async () => {
    await ownCode(tom, '480713')
    await manager.post(`/api/shops/${leadShop}/hands/${tom}/code`, {})
    const stage = await aStageInWork('Second primer')
    const answer = await press(phone, tom, 'stage.signOff', signOff(stage), { code: '480713' })
    expect(await answer.json()).toMatchObject({ needs: 'first code' })
    const mine = await (await (await aBrowser(yard, tom)).get('/api/my-codes')).json()
    expect(mine).toMatchObject([{ shop: leadShop, setAt: null, resetAt: expect.any(String) }])
  })

  it('of somebody who left the shop opens nothing: they can’t be chosen', async () => {
    const { rows } = await planted.pool.query<{ id: string }>(
      'select "id" from "Membership" where "person" = $1 and "shop" = $2',
      [tom, leadShop],
    )
    const gone = await manager.command('membership.remove', { membership: rows[0]?.id }, leadShop)
    expect(gone.status).toBe(200)
    const note = { on: project, text: 'Still here?', sharing: 'shared' }
    expect(await (await press(phone, tom, 'note.write', note)).json()).toMatchObject({
      needs: 'hand',
    })
  })
})

describe('a phone that is taken out', () => {
  it('is out at once: its pages, its presses and its socket', async () => {
    const { phone: lost, id } = await aPhone('Lost phone')
    const socket = lost.socket()
    expect(await following(socket, project)).toBeGreaterThan(0)
    const heardOf = changesOf(socket)
    await manager.command('note.write', { on: project, text: 'Live', sharing: 'shared' }, project)
    await heardOf.until(1)
    const closed = heard(socket, 'disconnect')
    const before = Date.now()
    const revoked = await manager.post(`/api/shops/${leadShop}/devices/${id}/revoke`, {})
    expect(revoked.status).toBe(200)
    expect((await lost.get(`/api/projects/${project}`)).status).toBe(401)
    const note = { on: project, text: 'Mine now', sharing: 'shared' }
    expect((await press(lost, ruth, 'note.write', note)).status).toBe(401)
    await closed
    expect(Date.now() - before).toBeLessThan(2000)
    const { devices }: ShopPhones = await revoked.json()
    expect(devices.map(({ name }) => name)).toContain('Paint bay phone')
    expect(devices.map(({ name }) => name)).not.toContain('Lost phone')
  })

  it('is out by its own press as well, and its name stays in the journal', async () => {
    expect((await phone.post('/api/device/leave', {})).status).toBe(200)
    expect((await phone.get('/api/device')).status).toBe(401)
    const again = await manager.post(`/api/shops/${leadShop}/devices/${phoneId}/revoke`, {})
    expect(again.status).toBe(404)
    const page: JournalPage = await (
      await manager.get(`/api/projects/${project}/journal?command=stage.signOff&limit=1`)
    ).json()
    expect(page.entries).toMatchObject([{ person: ruth, device: 'Paint bay phone' }])
  })
})
