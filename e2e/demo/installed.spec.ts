import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { type BrowserContext, chromium, expect, type Page } from '@playwright/test'
import { chromium as executable } from '../../lib/bin/chromium.ts'
import { FLAGS } from '../flags.ts'
import { carPath, shopPath } from './find.ts'
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
