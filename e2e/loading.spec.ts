import { expect, test } from '@playwright/test'
import { aServer } from '../test/a-server.ts'
import { keepLoaded } from './kept.ts'

/** What the demonstration may take to load, in ms. */
const LOADS_MS = 20_000

test('the demonstration is loaded by one press, saying how far it is, and opens its doors', async ({
  page,
}) => {
  const server = await aServer()
  try {
    await page.goto(`${server.url}/set-up`)
    await page.getByRole('button', { name: 'Load the demonstration' }).click()
    const began = Date.now()
    await expect(page.getByText(/\d+ of \d+ presses played/)).toBeVisible()
    await expect(page).toHaveURL(/\/sign-in$/, { timeout: 2 * LOADS_MS })
    expect(Date.now() - began).toBeLessThan(LOADS_MS)
    await expect(page.getByText('This is the demonstration.')).toBeVisible()
    for (const name of ['Mara Ellwood', 'Jory Wenlock', 'Sorrel Penn', 'Ines Halloran']) {
      await expect(page.getByRole('button', { name: `Sign in as ${name}` })).toBeVisible()
    }
    // Only while nothing else exists.
    await page.goto(`${server.url}/set-up`)
    await expect(page).toHaveURL(/\/sign-in$/)
    await server.stop()
    keepLoaded(server.dataDir)
  } finally {
    await server.remove()
  }
})
