import { chromium, expect, type Page } from '@playwright/test'
import { spacedCode, tagCode, tagPath } from '../../lib/custody/tag-code.ts'
import { FLAGS } from '../flags.ts'
import { carPath, find } from './find.ts'
import { keptRecords } from './kept-records.ts'
import { enter, test } from './loaded.ts'
import { writeFilm } from './tag-film.ts'

/** A phone whose camera sees `text`, for as long as `use` lasts; its keeper says yes to the camera, or no. */
async function withCamera(
  url: string,
  file: string,
  text: string | null,
  allowed: boolean,
  use: (page: Page) => Promise<void>,
): Promise<void> {
  writeFilm(file, text)
  const browser = await chromium.launch({
    executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
    args: [
      ...FLAGS,
      '--deny-permission-prompts',
      '--use-fake-device-for-media-stream',
      `--use-file-for-fake-video-capture=${file}`,
    ],
  })
  try {
    const context = await browser.newContext({
      baseURL: url,
      viewport: { width: 390, height: 844 },
      hasTouch: true,
      isMobile: true,
      permissions: allowed ? ['camera'] : [],
    })
    await use(await context.newPage())
  } finally {
    await browser.close()
  }
}

const openCamera = (page: Page) => page.getByRole('button', { name: 'Open the camera' }).tap()

test('the camera reads a tag and leads to its assembly, with its custody and its presses', async ({
  as,
  yard,
}, info) => {
  const phone = await as('Jory Wenlock')
  const car = await carPath(phone)
  const engine = await find(phone, 'assembly', ({ name }) => name === 'Engine')
  const address = yard.url + tagPath(tagCode(engine.id))
  await withCamera(yard.url, info.outputPath('tag.y4m'), address, true, async (page) => {
    await enter(page, 'Jory Wenlock', '/scan')
    // It asks before it looks.
    await expect(page.getByText('No picture is kept')).toBeVisible()
    await openCamera(page)
    await expect(page).toHaveURL(new RegExp(`${car}/assemblies/${engine.id}$`))
    await expect(page.getByText('Bexwater Engines answers for it')).toBeVisible()
    await expect(page.getByText(spacedCode(tagCode(engine.id))).first()).toBeVisible()
    await expect(page.getByRole('heading', { name: 'Work on it' })).toBeVisible()
  })
})

test('what hangs on no assembly is said to be so, and nothing found yet as well', async ({
  yard,
}, info) => {
  const file = info.outputPath('film.y4m')
  await withCamera(yard.url, file, 'BATCH 4411', true, async (page) => {
    await enter(page, 'Jory Wenlock', '/scan')
    await openCamera(page)
    await expect(page.getByText('That is no tag of this yard. It says: “BATCH 4411”')).toBeVisible()
    await page.getByRole('button', { name: 'Close the camera' }).tap()
    await expect(page.getByRole('button', { name: 'Open the camera' })).toBeVisible()
  })
  await withCamera(yard.url, file, null, true, async (page) => {
    await enter(page, 'Jory Wenlock', '/scan')
    await openCamera(page)
    await expect(page.getByText('Hold the squares of the tag within the frame.')).toBeVisible()
    await expect(page.getByText(/^Nothing found yet\./)).toBeVisible({ timeout: 10_000 })
  })
})

test('a camera that is refused is said to be so, with the way out', async ({ yard }, info) => {
  await withCamera(yard.url, info.outputPath('film.y4m'), null, false, async (page) => {
    await page.goto('/scan')
    await openCamera(page)
    await expect(
      page.getByText('This page may not use the camera.', { exact: false }),
    ).toBeVisible()
    await expect(page.getByRole('button', { name: 'Open the camera' })).toBeVisible()
  })
})

test('without a camera the code is typed, in small letters and with an O for a nought', async ({
  as,
}) => {
  const page = await as('Jory Wenlock', '/scan')
  const engine = await find(page, 'assembly', ({ name }) => name === 'Engine')
  await openCamera(page)
  await expect(page.getByText('This device has no camera. Type the code.')).toBeVisible()

  const code = page.getByLabel('The code on the tag')
  const open = page.getByRole('button', { name: 'Open the assembly' })
  const right = tagCode(engine.id)
  await code.fill(right.slice(0, 5))
  await open.tap()
  await expect(page.getByText('A code has eight figures and letters; this has 5.')).toBeVisible()
  await code.fill(right.slice(1, 8) + right.slice(0, 1))
  await open.tap()
  await expect(page.getByText('One of them is another', { exact: false })).toBeVisible()
  await code.fill(spacedCode(right).toLowerCase().replaceAll('0', 'o'))
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(new RegExp(`/assemblies/${engine.id}$`))
})

test('a tag of a car that one has no part in tells nothing, whoever’s camera opened it', async ({
  as,
}) => {
  const lead = await as('Mara Ellwood')
  const dunmore = await carPath(lead, 'Dunmore')
  const theirs = await find(lead, 'assembly', () => true, dunmore)
  const owner = await as('Ines Halloran')
  await owner.goto(tagPath(tagCode(theirs.id)))
  await expect(owner.getByText('is not for you', { exact: false })).toBeVisible()
  await expect(owner.getByText('Dunmore')).toHaveCount(0)
  await lead.goto(tagPath(tagCode(theirs.id)))
  await expect(lead).toHaveURL(new RegExp(`${dunmore}/assemblies/${theirs.id}$`))
})

test('without a network a tag opens what this phone keeps', async ({ as, yard }) => {
  const page = await as('Jory Wenlock')
  const engine = await find(page, 'assembly', ({ name }) => name === 'Engine')
  await page.goto(await carPath(page))
  await expect(page.getByText('Live', { exact: true })).toBeVisible()
  await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated')
  await expect.poll(() => keptRecords(page)).toBeGreaterThan(0)
  await yard.stop()

  await page.goto('/scan')
  await page.getByLabel('The code on the tag').fill(tagCode(engine.id))
  await page.getByRole('button', { name: 'Open the assembly' }).tap()
  await expect(page).toHaveURL(new RegExp(`/assemblies/${engine.id}$`))
  await expect(page.getByText('Bexwater Engines answers for it')).toBeVisible()
  // Its squares can be shown to another phone as well.
  await expect(page.locator('.squares path')).toHaveCount(1)

  await page.goto(tagPath(tagCode(engine.id)))
  await expect(page.getByText('Bexwater Engines answers for it')).toBeVisible()
  await page.goto(tagPath(tagCode('asm_elsewhere')))
  await expect(page.getByText('isn’t kept on this phone', { exact: false })).toBeVisible()
})
