import type pg from 'pg'
import { io } from 'socket.io-client'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { Changed } from '../lib/command/wire.ts'
import type { HandedLink } from '../lib/command/wire-access.ts'
import { freshKey } from '../lib/server/fresh-key.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import { aBrowser, type Browser, browserWith, type TestYard } from './a-yard.ts'
import { anId, leadShop, project } from './builders.ts'
import { personOf } from './see-cast.ts'
import { castings } from './see-samples.ts'

let planted: PlantedYard
let yard: TestYard
let manager: Browser
let pool: pg.Pool

beforeAll(async () => {
  planted = await aPlantedYard()
  yard = planted.yard
  pool = planted.pool
  manager = await aBrowser(yard, personOf.lead)
})
afterAll(() => planted.close())

const pathOf = (url: string): string => new URL(url).pathname

describe('a change from another site', () => {
  const body = () =>
    JSON.stringify({
      name: 'note.write',
      input: { on: project, text: 'Ours?', sharing: 'shared' },
      key: freshKey(),
      happenedAt: new Date().toISOString(),
    })
  const post = (headers: Record<string, string>) =>
    fetch(`${yard.url}/api/commands`, {
      method: 'POST',
      headers: { cookie: manager.cookie, ...headers },
      body: body(),
    })
  const json = { 'content-type': 'application/json' }

  it('is refused without our own Origin, whoever is signed in', async () => {
    expect((await post(json)).status).toBe(403)
    expect((await post({ ...json, origin: 'https://elsewhere.example' })).status).toBe(403)
    expect((await post({ ...json, origin: 'null' })).status).toBe(403)
    expect((await post({ ...json, origin: yard.url })).status).toBe(200)
  })

  it('is refused in any form that a page of another site can send', async () => {
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data']) {
      expect((await post({ 'content-type': type, origin: yard.url })).status).toBe(415)
    }
  })

  it('by a socket is refused as well, and a socket without a session', async () => {
    const failed = (extraHeaders: Record<string, string>) =>
      new Promise<string>((told) => {
        const socket = io(yard.url, {
          transports: ['websocket'],
          extraHeaders,
          reconnection: false,
        })
        socket.once('connect_error', ({ message }) => told(message))
        socket.once('connect', () => told('connected'))
      })
    const { cookie } = manager
    expect(await failed({ cookie, origin: 'https://elsewhere.example' })).toBe('websocket error')
    expect(await failed({ cookie })).toBe('websocket error')
    expect(await failed({ origin: yard.url })).toBe('Sign in first.')
    expect(await failed({ cookie: `${cookie}x`, origin: yard.url })).toBe('Sign in first.')
  })

  it('with a cookie that somebody made up is from nobody', async () => {
    const forged = browserWith(yard.url, 'next-auth.session-token=eyJhbGciOiJkaXIi')
    expect((await forged.get('/api/me')).status).toBe(401)
    expect((await forged.command('note.write', {})).status).toBe(401)
  })
})

describe('an invitation', () => {
  const invite = (body: object, browser = manager) => browser.post('/api/invitations', body)

  it('lets a person in with a password of their own, once', async () => {
    const answer = await invite({
      shop: leadShop,
      role: 'hand',
      name: 'Wren Ashby',
      email: 'Wren@yard.example',
    })
    expect(answer.status).toBe(200)
    const link: HandedLink = await answer.json()
    expect(link).toMatchObject({ mailed: false, qr: expect.stringContaining('<svg') })
    const token = pathOf(link.url).replace('/join/', '')
    const nobody = browserWith(yard.url, '')
    expect(await (await nobody.get(`/api/join/${token}`)).json()).toMatchObject({
      name: 'Wren Ashby',
      to: 'Tarn Lane Coachworks',
    })
    const short = await nobody.post(`/api/join/${token}`, { password: 'short' })
    expect(await short.json()).toMatchObject({ error: { field: 'password' } })

    const joined = await nobody.post(`/api/join/${token}`, { password: 'a long enough one' })
    expect(await joined.json()).toMatchObject({
      person: { email: 'Wren@yard.example' },
      shops: [{ id: leadShop, role: 'hand' }],
      projects: [{ id: project, lead: true }],
    })
    const cookie = joined.headers.get('set-cookie') ?? ''
    expect(cookie).toMatch(/HttpOnly; SameSite=Lax/)
    const wren = browserWith(yard.url, cookie.split(';')[0] ?? '')
    expect((await wren.get(`/api/projects/${project}`)).status).toBe(200)
    const again = await nobody.post(`/api/join/${token}`, { password: 'another long one' })
    expect(again.status).toBe(404)
  })

  it('by a hand is refused, and leaves no account behind', async () => {
    const hand = await aBrowser(yard, personOf['lead hand'])
    const body = { shop: leadShop, role: 'manager', name: 'A friend', email: 'friend@yard.example' }
    expect((await invite(body, hand)).status).toBe(403)
    const { rowCount } = await pool.query(
      `select from "Person" where "email" = 'friend@yard.example'`,
    )
    expect(rowCount).toBe(0)
  })

  it('of somebody with an account asks for the password they have: the link alone opens nothing', async () => {
    const known = await yard.doors.signIn.byPassword('wren@yard.example', 'a long enough one', 'x')
    expect(known).toMatchObject({ name: 'Wren Ashby', proof: 'password' })
    const answer = await invite({
      project,
      party: castings,
      name: 'Wren',
      email: 'wren@yard.example',
    })
    const { url }: HandedLink = await answer.json()
    const path = `/api${pathOf(url)}`
    const nobody = browserWith(yard.url, '')
    expect((await nobody.post(path, { password: 'not hers, but long' })).status).toBe(403)
    expect((await nobody.post(path, { password: 'a long enough one' })).status).toBe(200)
  })

  it('into a new shop is made anew for the lead, until the first of them has come in', async () => {
    const added = await manager.command('party.add', { name: 'Polishers', role: 'shop' }, project)
    const { changed }: { changed: Changed[] } = await added.json()
    const party = changed.flatMap(({ entities }) => entities).find(({ kind }) => kind === 'party')
    const asked = { project, party: party?.id, name: 'Pol Ashby', email: 'pol@yard.example' }
    expect((await invite(asked)).status).toBe(200)
    const engines = await aBrowser(yard, personOf.engines)
    expect((await invite(asked, engines)).status).toBe(403)
    const again = await invite(asked)
    expect(again.status).toBe(200)
    const { url }: HandedLink = await again.json()
    const nobody = browserWith(yard.url, '')
    const path = `/api${pathOf(url)}`
    expect((await nobody.post(path, { password: 'a long enough one' })).status).toBe(200)
    expect((await invite(asked)).status).toBe(403)
  })

  it('waits where the same address has not yet taken up another one', async () => {
    const first = { shop: leadShop, role: 'hand', name: 'Ro', email: 'ro@yard.example' }
    expect((await invite(first)).status).toBe(200)
    // The same inviter may give a new link: the first may be lost.
    expect((await invite(first)).status).toBe(200)
    const engines = await aBrowser(yard, personOf.engines)
    const second = { ...first, shop: anId('shp', 'engines') }
    expect((await invite(second, engines)).status).toBe(409)
  })

  it('of a shop that came by telephone opens its book, with whom the lead invites as its manager', async () => {
    const added = await manager.command(
      'party.add',
      { name: 'Hob Lane Blasting', role: 'shop' },
      project,
    )
    const { changed } = await added.json()
    const party: string = changed[0].entities[0].id
    const answer = await invite({ project, party, name: 'Gil Marsh', email: 'gil@yard.example' })
    expect(answer.status).toBe(200)
    const { url }: HandedLink = await answer.json()
    const nobody = browserWith(yard.url, '')
    const joined = await nobody.post(`/api${pathOf(url)}`, { password: 'sand and grit, sand' })
    expect(await joined.json()).toMatchObject({
      shops: [{ name: 'Hob Lane Blasting', role: 'manager' }],
      projects: [{ id: project, partyName: 'Hob Lane Blasting' }],
    })
  })

  it('names the field that is wrong', async () => {
    const wrong = await invite({ shop: leadShop, role: 'hand', name: 'Ro', email: 'nowhere' })
    expect(wrong.status).toBe(400)
    expect(await wrong.json()).toMatchObject({ error: { field: expect.any(String) } })
  })
})

describe('signing in', () => {
  it('by a wrong password too often is refused for a while, for that address only', async () => {
    const { signIn } = yard.doors
    for (let i = 0; i < 10; i++) {
      expect(await signIn.byPassword('ines@yard.example', `guess ${i}`, '192.0.2.1')).toBeNull()
    }
    await expect(signIn.byPassword('ines@yard.example', 'guess', '192.0.2.1')).rejects.toThrow(
      'Tried too often',
    )
    expect(await signIn.byPassword('ruth@yard.example', 'guess', '192.0.2.1')).toBeNull()
  })

  it('answers the same, in about the same time, for an address that nobody has', async () => {
    const { signIn } = yard.doors
    const timed = async (email: string) => {
      const began = performance.now()
      expect(await signIn.byPassword(email, 'a wrong one, long', '192.0.2.2')).toBeNull()
      return performance.now() - began
    }
    await timed('wren@yard.example')
    const known = await timed('wren@yard.example')
    const unknown = await timed('nobody@yard.example')
    // Both wait for argon2, which takes some tens of ms; a look-up alone takes less than a tenth of that.
    expect(unknown).toBeGreaterThan(known / 4)
  })

  it('is proved anew by the password only, with a new cookie', async () => {
    const account = await pool.query(
      `select "id" from "Person" where "email" = 'wren@yard.example'`,
    )
    const wren = await aBrowser(yard, anId('psn', account.rows[0].id.slice(4)))
    expect((await wren.post('/api/prove', { password: 'not this one' })).status).toBe(403)
    const proved = await wren.post('/api/prove', { password: 'a long enough one' })
    expect(await proved.json()).toMatchObject({ provedUntil: expect.any(String) })
    expect(proved.headers.get('set-cookie')).toContain('next-auth.session-token=')
  })

  it('by a link that was mailed works once', async () => {
    const { addLink } = await import('../lib/server/people/links.ts')
    const { token } = await addLink(yard.doors.prisma, 'magic', { person: personOf.trim })
    expect(await yard.doors.signIn.byLink(token, '192.0.2.3')).toMatchObject({
      person: personOf.trim,
      proof: 'mailed code',
    })
    expect(await yard.doors.signIn.byLink(token, '192.0.2.3')).toBeNull()
  })

  it('as a person of the demonstration is for such persons only', async () => {
    expect(await yard.doors.signIn.asDemo(personOf.lead)).toBeNull()
  })
})
