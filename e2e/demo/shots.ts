import { join } from 'node:path'
import type { Page } from '@playwright/test'
import { root } from '../../lib/bin/prepare.mjs'
import { enter, test } from './loaded.ts'
import { type Screen, screens } from './screens.ts'

// Pictures, not tests: `npm run shots` puts every screen at both widths into `shots/`, and with `-- --readme` the README's three
// into `e2e/pictures/`.

const WIDTHS = [390, 1280] as const
/** The three moments of the README: the picture's name, and what stands at its top. */
const README = new Map([
  ['refused-start', { picture: 'refused-start', top: '.notice-oxide' }],
  ['claim', { picture: 'claim', top: 'form .card' }],
  ['change-order', { picture: 'yes', top: '[aria-label="What your yes does"]' }],
])
/** What is left free above it, in px. */
const ABOVE = 14
const forReadme = process.env.FETTLEYARD_SHOTS === 'readme'

const show = async (page: Page, path: string) => {
  await page.goto(path)
  await page.locator('main').waitFor()
  await page.evaluate(() => document.fonts.ready)
}

async function every(page: Page, width: number, theirs: readonly Screen[]): Promise<void> {
  for (const { name, path } of theirs) {
    await page.setViewportSize({ width, height: width < 900 ? 844 : 800 })
    await show(page, await path(page))
    // A screen as high as the page: what stands at the foot stands at its foot.
    const height = await page.evaluate(() => document.documentElement.scrollHeight)
    await page.setViewportSize({ width, height })
    await page.screenshot({ path: join(root, 'shots', `${name}-${width}.png`) })
  }
}

async function pictures(page: Page, theirs: readonly Screen[]): Promise<void> {
  await page.setViewportSize({ width: 390, height: 844 })
  for (const { name, path } of theirs) {
    const moment = README.get(name)
    if (moment === undefined) continue
    await show(page, await path(page))
    const { y } = (await page.locator(moment.top).first().boundingBox()) ?? { y: 0 }
    await page.evaluate((to) => scrollTo(0, to), y - ABOVE)
    await page.screenshot({ path: join(root, 'e2e', 'pictures', `${moment.picture}.png`) })
  }
}

test('every screen', async ({ yard, browser }) => {
  test.setTimeout(20 * 60_000)
  for (const [who, theirs] of Map.groupBy(screens, (screen) => screen.who)) {
    const context = await browser.newContext({ baseURL: yard.url, deviceScaleFactor: 1 })
    const page = await context.newPage()
    await enter(page, who, '/')
    if (forReadme) await pictures(page, theirs)
    else for (const width of WIDTHS) await every(page, width, theirs)
    await context.close()
  }
})
