import { join } from 'node:path'
import AxeBuilder from '@axe-core/playwright'
import { type BrowserContext, expect, type Page, test } from '@playwright/test'
import { aDataDir, aServer, type TestServer } from '../../test/a-server.ts'
import { copyLoaded } from '../kept.ts'
import { enter } from './loaded.ts'
import { crampedTargets, outOfOrder, pastTheEdge } from './measure.ts'
import { type Screen, screens } from './screens.ts'

/** Nothing is pressed here, so that all may look at one server. */
let yard: TestServer

test.beforeAll(async () => {
  const dataDir = join(aDataDir(), 'data')
  copyLoaded(dataDir)
  yard = await aServer({ FETTLEYARD_DATA: dataDir })
})
test.afterAll(() => yard.remove())

const NARROWEST = { width: 320, height: 640 }
const PHONE = { width: 390, height: 844 }

/** What axe finds serious, in the theme that is on. */
async function serious(page: Page, theme: string): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).setLegacyMode(true).analyze()
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${theme}: ${id} at ${node.target.join(' ')}: ${node.failureSummary}`),
    )
}

async function faults(page: Page, { name, path }: Screen): Promise<readonly string[]> {
  await page.setViewportSize(PHONE)
  await page.emulateMedia({ colorScheme: 'light' })
  await page.goto(await path(page))
  await expect(
    page.getByText('Live', { exact: true }).or(page.locator('main')).first(),
  ).toBeVisible()
  const found = [
    ...(await serious(page, 'card')),
    ...(await page.evaluate(crampedTargets)),
    ...(await page.evaluate(outOfOrder)),
    ...(await page.evaluate(pastTheEdge)),
  ]
  await page.emulateMedia({ colorScheme: 'dark' })
  found.push(...(await serious(page, 'booth')))
  await page.setViewportSize(NARROWEST)
  found.push(...(await page.evaluate(pastTheEdge)))
  return found.map((fault) => `${name}: ${fault}`)
}

for (const [who, theirs] of Map.groupBy(screens, (screen) => screen.who)) {
  test(`every screen of ${who} can be read and pressed on a phone, by day and by night`, async ({
    browser,
  }) => {
    test.setTimeout(20_000 + 8_000 * theirs.length)
    const context: BrowserContext = await browser.newContext({ baseURL: yard.url })
    const page = await context.newPage()
    await enter(page, who, '/')
    const found: string[] = []
    for (const screen of theirs) found.push(...(await faults(page, screen)))
    await context.close()
    expect(found).toEqual([])
  })
}
