import { expect, test } from '@playwright/test'
import { aServer, type TestServer } from '../test/a-server.ts'
import { faultsAt } from './faults.ts'
import { hold } from './held.ts'

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
  'phone',
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

test('nothing moves but stamps, foot sheets and a held press, and none where less motion is asked for', async ({
  page,
}) => {
  const moving = () =>
    page.evaluate(() =>
      document
        .getAnimations()
        .map((one) => (one instanceof CSSAnimation ? one.animationName : 'a transition')),
    )
  await page.emulateMedia({ reducedMotion: 'no-preference' })
  await page.goto(`${yard.url}/parts-of-the-look`)
  const moved = new Set(await moving())
  expect(moved.size).toBeGreaterThan(0)
  expect([...moved].filter((name) => !['thump', 'up', 'fill'].includes(name))).toEqual([])
  await page.emulateMedia({ reducedMotion: 'reduce' })
  expect(await moving()).toEqual([])
})

test('a held press counts when held, by Enter twice, and by two taps of who can’t hold it; never by less', async ({
  page,
}) => {
  await page.goto(`${yard.url}/parts-of-the-look`)
  const group = page.locator('#presses [data-theme=card]')
  const press = group.getByRole('button', { name: /Hold to try/ })
  const counted = (times: number) =>
    expect(group.getByText(`Held press, to be tried: it counted ${times}`)).toBeVisible()
  await expect(press).toHaveAccessibleDescription('Hold it for a second, or press Enter twice.')

  // Until the page's code is here a press only waits.
  await expect(async () => {
    await press.click()
    await expect(group.getByText('Let go too early. Nothing was pressed.')).toHaveCount(2, {
      timeout: 500,
    })
  }).toPass()
  await counted(0)
  await hold(press)
  await counted(1)

  await press.focus()
  await page.keyboard.press('Enter')
  await counted(1)
  await page.keyboard.press('Enter')
  await counted(2)
  await page.keyboard.press('Space')
  await page.keyboard.press('Tab')
  await page.keyboard.press('Shift+Tab')
  await page.keyboard.press('Tab')
  await page.mouse.click(2, 2)
  await counted(2)

  await press.click()
  await group.getByRole('button', { name: 'Can’t hold it? Press here twice' }).last().click()
  await counted(2)
  await group.getByRole('button', { name: 'Press here once more' }).last().click()
  await counted(3)
  // As a screen reader presses: a bare click without a pointer.
  await press.dispatchEvent('click')
  await counted(3)
  await press.dispatchEvent('click')
  await counted(4)
})
