import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { aServer, type TestServer } from './a-server.ts'

let server: TestServer
const ruth = { email: 'ruth@tarnlane.example', password: 'lead and long boards' }

beforeAll(async () => {
  server = await aServer()
  const created = await fetch(`${server.url}/api/installation/shop`, {
    method: 'POST',
    headers: { origin: server.url, 'content-type': 'application/json' },
    body: JSON.stringify({
      shop: 'Tarn Lane Coachworks',
      currency: 'GBP',
      timeZone: 'Europe/London',
      taxRegistered: true,
      taxRate: 2000,
      name: 'Ruth Tarn',
      ...ruth,
    }),
  })
  expect(created.status).toBe(200)
})
afterAll(() => server.remove())

const cookiesOf = (response: Response): string =>
  response.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0])
    .join('; ')

/** Signs in as the sign-in page does. */
async function signIn(
  provider: string,
  given: object,
  withToken = true,
  callbackUrl = `${server.url}/`,
): Promise<Response> {
  const csrf = await fetch(`${server.url}/api/auth/csrf`)
  const { csrfToken } = await csrf.json()
  return fetch(`${server.url}/api/auth/callback/${provider}`, {
    method: 'POST',
    redirect: 'manual',
    headers: { cookie: cookiesOf(csrf), 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({
      ...given,
      ...(withToken && { csrfToken }),
      json: 'true',
      callbackUrl,
    }),
  })
}
const me = (cookie: string) => fetch(`${server.url}/api/me`, { headers: { cookie } })

describe('the sign-in page', () => {
  it('lets in by the right password, with a cookie that scripts and other sites never get', async () => {
    const answer = await signIn('password', ruth)
    expect(answer.status).toBe(200)
    const cookie = answer.headers.getSetCookie().find((one) => one.includes('session-token')) ?? ''
    expect(cookie).toMatch(/HttpOnly/i)
    expect(cookie).toMatch(/SameSite=Lax/i)
    expect(await (await me(cookie.split(';')[0] ?? '')).json()).toMatchObject({
      person: { name: 'Ruth Tarn', email: ruth.email },
      provedUntil: expect.any(String),
    })
  })

  it('keeps out by a wrong password, an unknown address and a token that is none, all alike', async () => {
    for (const [provider, given] of [
      ['password', { ...ruth, password: 'long and leaden boards' }],
      ['password', { email: 'nobody@tarnlane.example', password: ruth.password }],
      ['link', { token: 'made-up' }],
      ['demo', { person: 'psn_madeup' }],
    ] as const) {
      const answer = await signIn(provider, given)
      expect(answer.status).toBe(401)
      expect((await answer.json()).url).toContain('error=CredentialsSignin')
      expect(cookiesOf(answer)).not.toContain('session-token')
    }
  })

  it('lets nobody in whose form came from another site', async () => {
    const answer = await signIn('password', ruth, false)
    expect(cookiesOf(answer)).not.toContain('session-token')
  })

  it('leads on to a place of ours only, whatever the link said', async () => {
    const way = async (to: string) => (await (await signIn('password', ruth, true, to)).json()).url
    expect(await way('/account')).toContain('/account')
    for (const elsewhere of [
      '//elsewhere.example/',
      '/\\elsewhere.example/',
      'https://elsewhere.example/',
    ])
      expect(await way(elsewhere)).not.toContain('elsewhere')
  })

  it('is shut for a while after too many tries, and says so', async () => {
    const tries = Array.from({ length: 11 }, () =>
      signIn('password', { email: 'guess@tarnlane.example', password: 'a guess of ours' }),
    )
    const answers = await Promise.all(
      tries.map(async (answer) => (await (await answer).json()).url),
    )
    expect(
      answers.filter((url) => decodeURIComponent(url).includes('Tried too often')),
    ).toHaveLength(1)
    expect((await signIn('password', ruth)).status).toBe(200)
  })

  it('does not make an old session young when the page asks who is signed in', async () => {
    const cookie = cookiesOf(await signIn('password', ruth))
    const asked = await fetch(`${server.url}/api/auth/session`, { headers: { cookie } })
    expect(await asked.json()).toMatchObject({ person: expect.stringMatching(/^psn_/) })
    const renewed = cookiesOf(asked)
    const ended = await fetch(`${server.url}/api/sign-out-everywhere`, {
      method: 'POST',
      headers: { cookie, origin: server.url, 'content-type': 'application/json' },
      body: '{}',
    })
    expect(ended.status).toBe(200)
    expect((await me(cookie)).status).toBe(401)
    expect((await me(renewed)).status).toBe(401)
    const late = await fetch(`${server.url}/api/auth/session`, { headers: { cookie: renewed } })
    expect((await me(cookiesOf(late))).status).toBe(401)
  })
})
