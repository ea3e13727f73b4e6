import { expect } from '@playwright/test'
import { test } from './loaded.ts'

test('every page says that this is the demonstration, and leads to its doors and its end', async ({
  as,
}) => {
  const page = await as('Ines Halloran')
  const strip = page.getByRole('complementary', { name: 'The demonstration' })
  await expect(strip).toBeVisible()
  await strip.getByRole('link', { name: 'End it' }).click()
  await expect(page.getByRole('button', { name: 'Remove it all' })).toBeVisible()
  await strip.getByRole('link', { name: 'Sign in as somebody else' }).click()
  await page.getByRole('button', { name: 'Sign in as Jory Wenlock' }).click()
  await expect(page).not.toHaveURL(/\/sign-in/)
  await expect(strip).toBeVisible()
})
