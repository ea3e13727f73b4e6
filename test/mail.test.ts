import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import type { HandedLink } from '../lib/command/wire-access.ts'
import { aMailbox, type Mailbox } from './a-mailbox.ts'
import { aPlantedYard, type PlantedYard } from './a-planted-yard.ts'
import { aBrowser, aYard, browserWith, type TestYard } from './a-yard.ts'
import { leadShop } from './builders.ts'
import { personOf } from './see-cast.ts'

let planted: PlantedYard
let mailbox: Mailbox
let yard: TestYard

beforeAll(async () => {
  mailbox = await aMailbox()
  planted = await aPlantedYard()
  yard = await aYard(planted.databaseUrl, { SMTP_URL: mailbox.url })
})
afterAll(async () => {
  await yard.close()
  await planted.close()
  mailbox.close()
})

/** Jobs that were saved and not put into the queue yet. */
async function waitingJobs(): Promise<number> {
  const { rows } = await planted.pool.query<{ readonly n: number }>(
    'select count(*)::int as n from "Job"',
  )
  return rows[0]?.n ?? -1
}

const tokenIn = (text: string): string => /\/sign-in\/link\/([\w-]+)/.exec(text)?.[1] ?? ''

describe('with a mail server', () => {
  it('an invitation goes by mail, and is handed to the inviter all the same', async () => {
    const manager = await aBrowser(yard, personOf.lead)
    const invite = { shop: leadShop, role: 'hand', name: 'Wren Ashby', email: 'wren@yard.example' }
    const link: HandedLink = await (await manager.post('/api/invitations', invite)).json()
    expect(link.mailed).toBe(true)
    const { text } = await mailbox.next('wren@yard.example')
    const token = /\/join\/([\w-]+)/.exec(text)?.[1] ?? ''
    expect(await yard.doors.invitations.read(token)).toMatchObject({ name: 'Wren Ashby' })
  })

  it('an invitation that is refused sends no mail', async () => {
    const hand = await aBrowser(yard, personOf['lead hand'])
    const invite = { shop: leadShop, role: 'hand', name: 'Tarn Oake', email: 'tarn@yard.example' }
    expect((await hand.post('/api/invitations', invite)).status).toBe(403)
    expect(await waitingJobs()).toBe(0)
    const manager = await aBrowser(yard, personOf.lead)
    await manager.post('/api/invitations', { ...invite, email: 'oake@yard.example' })
    await mailbox.next('oake@yard.example')
    expect(mailbox.all.some(({ to }) => to === 'tarn@yard.example')).toBe(false)
  })

  it('a mail that the server would not take is sent again, once', async () => {
    const manager = await aBrowser(yard, personOf.lead)
    const invite = { shop: leadShop, role: 'hand', name: 'Fen Marsh', email: 'fen@yard.example' }
    mailbox.refuse(1)
    await manager.post('/api/invitations', invite)
    expect((await mailbox.next('fen@yard.example')).text).toContain('/join/')
    expect(mailbox.all.filter(({ to }) => to === 'fen@yard.example')).toHaveLength(1)
  })

  it('no link lies in the queue, and what was saved before a node died is sent by the next', async () => {
    const asked = { type: 'sign-in', person: personOf.trim, next: null, askedAt: new Date() }
    const late = { ...asked, person: personOf.lead, askedAt: new Date(Date.now() - 3_600_000) }
    const sent = mailbox.all.length
    await planted.pool.query(
      `insert into "Job" ("name", "payload") values ('mail', $1), ('mail', $2)`,
      [late, asked],
    )
    const next = await aYard(planted.databaseUrl, { SMTP_URL: mailbox.url })
    try {
      await mailbox.next('thistle@yard.example')
      const { rows } = await planted.pool.query<{ readonly data: object }>(
        `select data from queue.job where name = 'mail'`,
      )
      expect(rows.length).toBeGreaterThan(1)
      expect(JSON.stringify(rows)).not.toMatch(/token|http/)
      expect(await waitingJobs()).toBe(0)
      // Whoever asked an hour ago has given up.
      expect(mailbox.all.slice(sent).map(({ to }) => to)).toEqual(['thistle@yard.example'])
    } finally {
      await next.close()
    }
  })

  it('a sign-in link comes by mail, works once, and leads back to where one was', async () => {
    const asked = await browserWith(yard.url, '').post('/api/magic-link', {
      email: 'thistle@yard.example',
      next: '/p/prj_averley',
    })
    expect(asked.status).toBe(200)
    const { text } = await mailbox.next('thistle@yard.example')
    expect(text).toContain('?next=%2Fp%2Fprj_averley')
    const { signIn } = yard.doors
    expect(await signIn.byLink(tokenIn(text), '192.0.2.1')).toMatchObject({
      person: personOf.trim,
      proof: 'mailed code',
    })
    expect(await signIn.byLink(tokenIn(text), '192.0.2.1')).toBeNull()
  })

  it('an address that nobody has gets the same answer, and no mail', async () => {
    const ask = (email: string) => browserWith(yard.url, '').post('/api/magic-link', { email })
    const before = mailbox.all.length
    const unknown = await ask('nobody@yard.example')
    const known = await ask('ines@yard.example')
    expect([unknown.status, await unknown.text()]).toEqual([known.status, await known.text()])
    await mailbox.next('ines@yard.example')
    expect(mailbox.all.length).toBe(before + 1)
  })

  it('without one, nothing is promised', async () => {
    const asked = await browserWith(planted.yard.url, '').post('/api/magic-link', {
      email: 'ines@yard.example',
    })
    expect(asked.status).toBe(409)
    expect(await asked.json()).toMatchObject({ error: { field: 'email' } })
  })

  it('a form can’t be used to fill the server', async () => {
    const asked = await browserWith(yard.url, '').post('/api/magic-link', {
      email: 'ines@yard.example',
      next: 'x'.repeat(300_000),
    })
    expect(asked.status).toBe(413)
  })
})
