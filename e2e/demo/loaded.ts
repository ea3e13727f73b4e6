import {
  type Browser,
  type BrowserContext,
  test as base,
  expect,
  type Page,
} from '@playwright/test'
import { aDataDir, aServer, type TestServer } from '../../test/a-server.ts'
import { copyLoaded } from '../kept.ts'

/** A phone of its own for somebody, signed in by one press, on the page that `way` leads to. */
export type As = (name: string, way?: string) => Promise<Page>

interface Loaded {
  readonly yard: TestServer
  readonly as: As
}

/** Tests with a server of their own each, on a copy of the loaded demonstration. */
export const test = base.extend<Loaded>({
  yard: async ({ browserName: _ }, use) => {
    const dataDir = aDataDir()
    copyLoaded(dataDir)
    const server = await aServer({ FETTLEYARD_DATA: dataDir })
    await use(server)
    await server.remove()
  },
  baseURL: async ({ yard }, use) => use(yard.url),
  as: async ({ browser, yard }, use) => {
    const contexts: BrowserContext[] = []
    await use(async (name, way = '/') => {
      const page = await aPhone(browser, yard, contexts)
      await enter(page, name, way)
      return page
    })
    for (const context of contexts) await context.close()
  },
})

async function aPhone(browser: Browser, yard: TestServer, contexts: BrowserContext[]) {
  const context = await browser.newContext({ baseURL: yard.url })
  contexts.push(context)
  return context.newPage()
}

/** Comes in by the demonstration's door. */
export async function enter(page: Page, name: string, way: string): Promise<void> {
  await page.goto(`/sign-in?again=1&next=${encodeURIComponent(way)}`)
  await page.getByRole('button', { name: `Sign in as ${name}` }).click()
  await expect(page).not.toHaveURL(/\/sign-in/)
}
