import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, expect, type Page } from '@playwright/test'
import { chromium as executable } from '../../lib/bin/chromium.ts'
import { root } from '../../lib/bin/prepare.mjs'
import { SYNC_TAG } from '../../lib/live/outbox/sync-tag.ts'
import { FLAGS } from '../flags.ts'
import { carPath, find, shopPath } from './find.ts'
import { keptRecords } from './kept-records.ts'
import { enter, test as loaded } from './loaded.ts'

/** A phone with a profile on its disk: a browser puts nothing among its programs in a private window. */
const test = loaded.extend<{ phone: Page; owned: BrowserContext }>({
  owned: async ({ yard }, use) => {
    const profile = mkdtempSync(join(tmpdir(), 'fettleyard-phone-'))
    const context = await chromium.launchPersistentContext(profile, {
      executablePath: await executable(),
      args: FLAGS,
      viewport: { width: 390, height: 844 },
      baseURL: yard.url,
    })
    await use(context)
    await context.close()
    rmSync(profile, { recursive: true, force: true })
  },
  phone: async ({ owned }, use) => use(await owned.newPage()),
})

/** Resolves when the worker has the page, and all that it keeps. */
const workerHere = (page: Page) =>
  page.waitForFunction(
    async () =>
      (await navigator.serviceWorker.ready).active?.state === 'activated' &&
      navigator.serviceWorker.controller !== null,
  )

const WORKER = join(root, 'public', 'sw.js')

/** From now on the server has a newer worker, the same but for its last line; and the browser looks. @returns puts the former back */
async function newVersion(page: Page): Promise<() => void> {
  const former = readFileSync(WORKER)
  writeFileSync(WORKER, `${former}\n// newer`)
  await page.evaluate(async () => {
    const registration = await navigator.serviceWorker.ready
    await registration.update()
  })
  return () => writeFileSync(WORKER, former)
}

test('a phone finds all that it wants to put Fettleyard among its programs, and offers to', async ({
  phone,
  owned,
}) => {
  await enter(phone, 'Jory Wenlock', '/account')
  await workerHere(phone)
  const wire = await owned.newCDPSession(phone)
  const { url, errors } = await wire.send('Page.getAppManifest')
  expect(new URL(url).pathname).toBe('/manifest.webmanifest')
  expect(errors).toEqual([])
  expect((await wire.send('Page.getInstallabilityErrors')).installabilityErrors).toEqual([])
  await expect(phone.getByRole('button', { name: 'Put Fettleyard on this phone' })).toBeVisible()
})

test('a page that came past the worker is taken by it all the same', async ({ phone, owned }) => {
  await enter(phone, 'Jory Wenlock', '/account')
  await workerHere(phone)
  const wire = await owned.newCDPSession(phone)
  await phone.addInitScript(() => {
    Object.assign(window, { hadWorker: navigator.serviceWorker.controller !== null })
  })
  const loadedAnew = phone.waitForEvent('load')
  await wire.send('Page.reload', { ignoreCache: true })
  await loadedAnew
  expect(await phone.evaluate(() => 'hadWorker' in window && window.hadWorker)).toBe(false)
  await workerHere(phone)
})

test('the shortcut to the day sheet leads a hand to the shop, and the owner to the car', async ({
  as,
}) => {
  const hand = await as('Jory Wenlock', '/day-sheet')
  await expect(hand).toHaveURL(await shopPath(hand))
  const owner = await as('Ines Halloran', '/day-sheet')
  await expect(owner).toHaveURL(await carPath(owner))
})

test('nothing is asked of another host', async ({ as, yard }) => {
  const page = await as('Mara Ellwood')
  const asked = new Set<string>()
  page.context().on('request', (request) => asked.add(new URL(request.url()).origin))
  page.on('websocket', (socket) => asked.add(new URL(socket.url().replace('ws', 'http')).origin))
  const car = await carPath(page)
  for (const path of [
    '/',
    '/account',
    await shopPath(page),
    car,
    `${car}/build-order`,
    '/sign-in?again=1',
  ])
    await page.goto(path, { waitUntil: 'networkidle' })
  expect([...asked]).toEqual([new URL(yard.url).origin])
})

test('a new version is offered and never forced; it waits for what is unsent, and is taken once', async ({
  phone,
  owned,
}) => {
  await enter(phone, 'Sil Harker', '/account')
  await workerHere(phone)
  const car = await carPath(phone, 'Dunmore')
  const { id } = await find(phone, 'stage', ({ name }) => name?.startsWith('Springs') ?? false, car)
  await phone.goto(`${car}/stages/${id}`)
  await expect(phone.getByText('Live', { exact: true })).toBeVisible()
  let loads = 0
  phone.on('load', () => {
    loads += 1
  })
  const putBack = await newVersion(phone)
  try {
    const offer = phone.getByRole('region', { name: 'The program' })
    const take = offer.getByRole('button', { name: 'Take it' })
    await expect(offer).toContainText('A new version is ready.')
    await expect(take).toBeVisible()

    await owned.setOffline(true)
    await phone.getByLabel('A note').fill('Leaf two is cracked at the eye.')
    await phone.getByRole('button', { name: 'Write the note' }).click()
    await expect(offer).toContainText('It waits until what is unsent here has been sent.')
    await expect(take).toHaveCount(0)

    await owned.setOffline(false)
    await expect(take).toBeVisible()
    // What is typed and not pressed goes along.
    await phone.getByLabel('A note').fill('And leaf three')
    expect(loads).toBe(0)
    await take.click()
    await expect.poll(() => loads).toBe(1)
    await workerHere(phone)
    await expect(phone.getByText('Leaf two is cracked at the eye.')).toBeVisible()
    await expect(phone.getByLabel('A note')).toHaveValue('And leaf three')
    await expect(offer).toHaveCount(0)
    expect(
      await phone.evaluate(async () => (await navigator.serviceWorker.ready).waiting === null),
    ).toBe(true)
    expect(loads).toBe(1)
  } finally {
    putBack()
  }
})

test('what was pressed goes out with no page open, where the browser calls the worker', async ({
  phone,
  owned,
  as,
  yard,
}) => {
  await enter(phone, 'Sil Harker', '/account')
  await workerHere(phone)
  const car = await carPath(phone, 'Dunmore')
  const { id } = await find(phone, 'stage', ({ name }) => name?.startsWith('Springs') ?? false, car)
  await phone.goto(`${car}/stages/${id}`)
  await expect(phone.getByText('Live', { exact: true })).toBeVisible()
  await owned.setOffline(true)
  await phone.getByLabel('A note').fill('Sent by nobody’s hand.')
  await phone.getByRole('button', { name: 'Write the note' }).click()
  await expect(phone.getByText(/^1 unsent/)).toBeVisible()
  // A page of nobody's, from which the browser can be made to call: by itself it does so minutes after it failed once.
  const wire = await owned.newCDPSession(await owned.newPage())
  const registered = new Promise<string>((resolve) =>
    wire.on('ServiceWorker.workerRegistrationUpdated', ({ registrations }) => {
      const own = registrations.find(({ scopeURL }) => scopeURL === `${yard.url}/`)
      if (own !== undefined) resolve(own.registrationId)
    }),
  )
  await wire.send('ServiceWorker.enable')
  const registrationId = await registered
  await phone.close()
  await owned.setOffline(false)
  await wire.send('ServiceWorker.dispatchSyncEvent', {
    origin: yard.url,
    registrationId,
    tag: SYNC_TAG,
    lastChance: false,
  })

  const lead = await as('Mara Ellwood')
  await lead.goto(`${car}/stages/${id}`)
  await expect(lead.getByText('Sent by nobody’s hand.')).toBeVisible({ timeout: 20_000 })
})

test('with one bar of signal a hanging page gives way to what the phone kept, and goes on live; with none it opens too', async ({
  phone,
  yard,
}) => {
  await enter(phone, 'Jory Wenlock', '/account')
  await workerHere(phone)
  const car = await carPath(phone)
  await phone.goto(car)
  await expect(phone.getByText('Live', { exact: true })).toBeVisible()
  await expect.poll(() => keptRecords(phone)).toBeGreaterThan(0)

  yard.process.kill('SIGSTOP')
  try {
    const began = Date.now()
    const answer = await phone.goto(car, { waitUntil: 'commit' })
    expect(answer?.fromServiceWorker()).toBe(true)
    expect(Date.now() - began).toBeLessThan(8_000)
    await expect(phone.getByText(/^(As of \d\d:\d\d|Connecting)/)).toBeVisible()
  } finally {
    yard.process.kill('SIGCONT')
  }
  await expect(phone.getByText('Live', { exact: true })).toBeVisible({ timeout: 30_000 })

  await yard.stop()
  expect((await phone.goto(`${car}/build-order`))?.status()).toBe(200)
  await expect(phone.getByText(/^As of \d\d:\d\d/)).toBeVisible()
})
