import type { Page } from '@playwright/test'

/** Enters the reading of a check on a stage's page. */
export async function read(page: Page, check: string, value: string): Promise<void> {
  const row = page.locator('li.check', { has: page.getByRole('heading', { name: check }) })
  await row.getByLabel(/^Reading/).fill(value)
  await row.getByRole('button', { name: 'Enter', exact: true }).click()
}

/** The two readings that the engine lacks before it is ready to fit, as they should be. */
export async function readTheRest(page: Page): Promise<void> {
  await read(page, 'oil pressure hot, 3,000 rev/min', '3.8')
  await read(page, 'compression spread, warm', '4.5')
}
