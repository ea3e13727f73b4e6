import { expect, test } from '@playwright/test'
import { aDataDir, aServer, type TestServer } from '../../test/a-server.ts'
import { faultsAt } from '../faults.ts'
import { copyLoaded } from '../kept.ts'
import { enter } from './loaded.ts'
import { screens } from './screens.ts'

/** Nothing is pressed here, so that all may look at one server. */
let yard: TestServer

test.beforeAll(async () => {
  const dataDir = aDataDir()
  copyLoaded(dataDir)
  yard = await aServer({ FETTLEYARD_DATA: dataDir })
})
test.afterAll(() => yard.remove())

for (const [who, theirs] of Map.groupBy(screens, (screen) => screen.who)) {
  test(`every screen of ${who} can be read and pressed on a phone, by day and by night`, async ({
    browser,
  }) => {
    test.setTimeout(20_000 + 8_000 * theirs.length)
    const context = await browser.newContext({ baseURL: yard.url })
    const page = await context.newPage()
    await enter(page, who, '/')
    const found: string[] = []
    for (const { name, path } of theirs) {
      for (const fault of await faultsAt(page, await path(page))) found.push(`${name}: ${fault}`)
    }
    await context.close()
    expect(found).toEqual([])
  })
}

test('the doors of the demonstration can be read and pressed on a phone', async ({ page }) => {
  expect(await faultsAt(page, `${yard.url}/sign-in`)).toEqual([])
})
