import { expect, test } from '@playwright/test'
import { aServer, type TestServer } from '../test/a-server.ts'
import { faultsAt } from './faults.ts'

/** One server for all: nothing on that page reaches it. */
let yard: TestServer
test.beforeAll(async () => {
  yard = await aServer({ PARTS_PAGE: 'yes' })
})
test.afterAll(() => yard.remove())

const GROUPS = [
  'materials',
  'marks',
  'presses',
  'fields',
  'papers',
  'refusals',
  'stage-cards',
  'leaves',
  'floor',
  'states',
]

for (const width of [390, 1280]) {
  test(`every part looks as it did, by day and by night, at ${width} px`, async ({ browser }) => {
    const context = await browser.newContext({
      viewport: { width, height: 900 },
      deviceScaleFactor: 1,
      reducedMotion: 'reduce',
    })
    const page = await context.newPage()
    await page.goto(`${yard.url}/parts-of-the-look`)
    await page.evaluate(() => document.fonts.ready)
    for (const group of GROUPS) {
      await expect
        .soft(page.locator(`#${group}`))
        .toHaveScreenshot(`${group}-${width}.png`, { maxDiffPixelRatio: 0.01 })
    }
    await context.close()
  })
}

test('every part can be read and pressed on a phone, by day and by night', async ({ page }) => {
  expect(await faultsAt(page, `${yard.url}/parts-of-the-look`)).toEqual([])
})

test('the page of the parts is there only where it is asked for', async ({ page }) => {
  const other = await aServer()
  const answer = await page.goto(`${other.url}/parts-of-the-look`)
  await other.remove()
  expect(answer?.status()).toBe(404)
})
