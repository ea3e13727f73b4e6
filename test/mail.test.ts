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

const tokenIn = (text: string): string => /\/sign-in\/link\/([\w-]+)/.exec(text)?.[1] ?? ''

describe('with a mail server', () => {
  it('an invitation goes by mail, and is handed to the inviter all the same', async () => {
    const manager = await aBrowser(yard, personOf.lead)
    const invite = { shop: leadShop, role: 'hand', name: 'Wren Ashby', email: 'wren@yard.example' }
    const link: HandedLink = await (await manager.post('/api/invitations', invite)).json()
    expect(link.mailed).toBe(true)
    expect((await mailbox.next('wren@yard.example')).text).toContain(link.url)
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
