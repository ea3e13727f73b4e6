import { test as base } from '@playwright/test'
import { aServer, type TestServer } from '../test/a-server.ts'

/** Tests with a real server of their own for each file, empty at first; `page.goto('/')` goes there. */
export const test = base.extend<object, { yard: TestServer }>({
  yard: [
    async ({ browserName: _ }, use) => {
      const server = await aServer()
      await use(server)
      await server.remove()
    },
    { scope: 'worker' },
  ],
  baseURL: async ({ yard }, use) => use(yard.url),
})
