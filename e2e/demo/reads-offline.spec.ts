import { expect, type Page } from '@playwright/test'
import { aServer, type TestServer } from '../../test/a-server.ts'
import { carPath, find, pathTo, sendPast, shopPath } from './find.ts'
import { keptRecords } from './kept-records.ts'
import { enter, test } from './loaded.ts'
import { sameDocument } from './same-document.ts'

const READY = 'Engine ready to fit'
const AS_OF = /^As of \d\d:\d\d, no network$/

/** Opens a page and waits until it is live, the phone has its worker, and what was seen is kept. */
async function seen(page: Page, path: string, records: number): Promise<void> {
  await page.goto(path)
  await expect(page.getByText('Live', { exact: true })).toBeVisible()
  await page.waitForFunction(
    async () =>
      (await navigator.serviceWorker.ready).active?.state === 'activated' &&
      navigator.serviceWorker.controller !== null,
  )
  await expect.poll(() => keptRecords(page)).toBeGreaterThanOrEqual(records)
}

/** The same yard again, at the same address, on what it had. */
const again = (yard: TestServer): Promise<TestServer> =>
  aServer({ FETTLEYARD_DATA: yard.dataDir, PORT: new URL(yard.url).port })

test('what was seen opens without a server, with its age, and goes on live in its place', async ({
  as,
  yard,
}) => {
  const phone = await as('Jory Wenlock')
  const shop = await shopPath(phone)
  const car = await carPath(phone)
  const stage = await pathTo(phone, 'stage', READY)
  const { id } = await find(phone, 'stage', ({ name }) => name?.startsWith(READY) ?? false)
  await seen(phone, shop, 2)
  const sheet = await phone.locator('.day').textContent()
  await seen(phone, stage, 2)
  await yard.stop()

  await phone.goto(stage)
  await expect(phone.getByText(AS_OF)).toBeVisible()
  await expect(phone.getByRole('heading', { name: 'Notes', exact: true })).toBeVisible()
  await expect(phone).toHaveTitle('Stage · Fettleyard')
  await phone.goto(shop)
  await expect(phone.getByText(AS_OF)).toBeVisible()
  await expect(phone.locator('.day')).toHaveText(sheet ?? '')
  await phone.getByRole('link', { name: 'Diary', exact: true }).click()
  await expect(phone.getByText(AS_OF)).toBeVisible()

  await phone.goto(`${car}/journal`)
  await expect(phone.getByText('The journal needs a network')).toBeVisible()
  await phone.goto('/p/prj_nowhere')
  await expect(phone.getByText('This phone does not keep that project.')).toBeVisible()
  await phone.goto('/account')
  await expect(phone.getByText('This page needs a network.')).toBeVisible()
  await phone.goto('/unsent')
  await expect(phone.getByText('Everything is sent')).toBeVisible()
  await phone.goto('/scan')
  await expect(phone.getByRole('heading', { name: 'Scan a tag' })).toBeVisible()
  await phone.goto('/')
  await expect(phone.getByText(/^As of \d\d:\d\d today$/).first()).toBeVisible()
  await phone.getByRole('link', { name: /Averley/ }).click()
  await expect(phone.getByText(AS_OF)).toBeVisible()
  await phone.goto(stage)
  await expect(phone.getByText(AS_OF)).toBeVisible()
  await phone.reload()
  await expect(phone.getByText(AS_OF)).toBeVisible()

  const stays = await sameDocument(phone)
  const back = await again(yard)
  try {
    const text = 'The dipstick tube is back in.'
    const desk = await as('Wyn Pardoe')
    expect((await sendPast(desk, 'note.write', { on: id, sharing: 'shared', text })).status).toBe(
      200,
    )
    await expect(phone.getByText('Live', { exact: true })).toBeVisible({ timeout: 20_000 })
    await expect(phone.getByText(text)).toBeVisible()
    await stays()
    await phone.getByRole('link', { name: 'Build order', exact: true }).click()
    await expect(phone).toHaveURL(/build-order$/)
    await expect(phone.getByText('Live', { exact: true })).toBeVisible()
  } finally {
    await back.stop()
  }
})

test('a sign-out takes what was kept with it, and nobody else finds it', async ({ as, yard }) => {
  const phone = await as('Ines Halloran')
  const car = await carPath(phone)
  await seen(phone, car, 1)
  await phone.goto('/account')
  await phone.getByRole('button', { name: 'Sign out on this device' }).click()
  await expect(phone).toHaveURL(/\/sign-in/)
  expect(await keptRecords(phone)).toBe(0)

  await enter(phone, 'Ines Halloran', car)
  await seen(phone, car, 1)
  await phone.goto('/sign-in?again=1')
  await enter(phone, 'Jory Wenlock', '/account')
  await yard.stop()
  await phone.goto(car)
  await expect(phone.getByText('This phone does not keep that project.')).toBeVisible()
  await expect(phone.getByText('Nothing is kept here yet')).toBeVisible()

  // The page that isn't kept comes by itself once the server is back.
  const back = await again(yard)
  try {
    await expect(phone.getByText('This phone does not keep that project.')).toHaveCount(0, {
      timeout: 20_000,
    })
    await expect(phone).toHaveURL(car)
    await expect(phone.getByText('Live', { exact: true })).toBeVisible()
  } finally {
    await back.stop()
  }
})
