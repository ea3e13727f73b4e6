import { join } from 'node:path'
import type { Locator, Page } from '@playwright/test'
import { root } from '../../lib/bin/prepare.mjs'
import { enter, test } from './loaded.ts'
import { readTheRest } from './read.ts'
import { type Screen, screens } from './screens.ts'

// Pictures, not tests: `npm run shots` puts every screen at both widths and in both themes into `shots/`, and with
// `-- --readme` the README's into `e2e/pictures/`.

const WIDTHS = [390, 1280] as const
const THEMES = [
  { theme: 'card', scheme: 'light' },
  { theme: 'booth', scheme: 'dark' },
] as const
interface Moment {
  readonly picture: string
  /** At a desk, not on a phone. */
  readonly desk?: boolean
  /** What stands at its top, or at its foot. */
  readonly top?: (page: Page) => Locator
  readonly foot?: (page: Page) => Locator
  /** What is pressed before. */
  readonly before?: (page: Page) => Promise<void>
}

/** Without a signal: a note is written, the work is paused, and both wait on the phone. */
async function pressAway(page: Page): Promise<void> {
  await page.getByText('Live', { exact: true }).waitFor()
  await page.context().setOffline(true)
  await page.getByLabel('A note').fill('Leaf two is cracked at the eye.')
  await page.getByRole('button', { name: 'Write the note' }).click()
  await page.getByRole('button', { name: /^Pause \d+/ }).click()
  await page.getByRole('link', { name: /^2 unsent/ }).waitFor()
}

/** The README's pictures, by screen: its three moments, a refused start, the drawn build order, a phone without a signal. */
const README = new Map<string, Moment>([
  [
    'stage-in-work',
    {
      picture: 'ready-to-fit',
      before: readTheRest,
      foot: (page) => page.getByRole('button', { name: /^Ready to fit/ }),
    },
  ],
  ['refused-start', { picture: 'refused-start', top: (page) => page.locator('.notice-oxide') }],
  [
    'claim',
    { picture: 'claim', foot: (page) => page.getByText('It is agreed at once', { exact: false }) },
  ],
  ['change-order', { picture: 'yes', top: (page) => page.getByLabel('What your yes does') }],
  ['build-order', { picture: 'drawn', desk: true, top: (page) => page.locator('.drawn-zoom') }],
  [
    'stage-hand',
    { picture: 'no-signal', before: pressAway, top: (page) => page.locator('.plate') },
  ],
])
/** What is left free above it or below it, in px. */
const FREE = 14
const HEIGHT = 844
const DESK_HEIGHT = 940
const forReadme = process.env.FETTLEYARD_SHOTS === 'readme'

const show = async (page: Page, path: string) => {
  await page.goto(path)
  await page.locator('main').waitFor()
  await page.evaluate(() => document.fonts.ready)
}

async function every(page: Page, width: number, theirs: readonly Screen[]): Promise<void> {
  for (const { name, path } of theirs) {
    await page.setViewportSize({ width, height: width < 900 ? HEIGHT : 800 })
    await show(page, await path(page))
    // A screen as high as the page: what stands at the foot stands at its foot.
    const height = await page.evaluate(() => document.documentElement.scrollHeight)
    await page.setViewportSize({ width, height })
    for (const { theme, scheme } of THEMES) {
      await page.emulateMedia({ colorScheme: scheme })
      await page.screenshot({ path: join(root, 'shots', `${name}-${width}-${theme}.png`) })
    }
  }
}

/** From where the page is to be seen. */
async function from(page: Page, { top, foot }: Moment): Promise<number> {
  const stands = (top ?? foot)?.(page).first()
  await stands?.waitFor()
  const at = (await stands?.boundingBox()) ?? { y: 0, height: 0 }
  const rail = (await page.locator('nav.rail').boundingBox())?.height ?? 0
  const scrolled = await page.evaluate(() => scrollY)
  const inView = top === undefined ? at.y + at.height + FREE - (HEIGHT - rail) : at.y - FREE
  return scrolled + inView
}

async function pictures(page: Page, theirs: readonly Screen[]): Promise<void> {
  for (const { name, path } of theirs) {
    const moment = README.get(name)
    if (moment === undefined) continue
    const desk = moment.desk === true
    await page.setViewportSize({ width: desk ? 1280 : 390, height: desk ? DESK_HEIGHT : HEIGHT })
    await show(page, await path(page))
    await moment.before?.(page)
    await page.evaluate((to) => scrollTo(0, to), await from(page, moment))
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
