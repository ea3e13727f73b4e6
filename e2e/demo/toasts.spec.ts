import { expect } from '@playwright/test'
import { pathTo } from './find.ts'
import { test } from './loaded.ts'

test('what was just pressed is said in its own words and taken back; the next news doesn’t push it away', async ({
  as,
}) => {
  const page = await as('Jory Wenlock')
  await page.goto(await pathTo(page, 'stage', 'Engine ready to fit'))
  const pressed = page.getByRole('region', { name: 'Just done' })
  await page.getByRole('button', { name: /^Pause \d+/ }).click()
  await expect(pressed.getByText(/^\d+ is paused\.$/)).toBeVisible()
  await expect(page.getByText('Paused').first()).toBeVisible()
  await page.getByRole('button', { name: /^Resume \d+/ }).click()
  await expect(pressed.getByText(/^\d+ is in work again\.$/)).toBeVisible()
  // Both can still be taken back, the newest last.
  await expect(pressed.getByRole('button', { name: /^(Resume|Pause again)$/ })).toHaveText([
    'Resume',
    'Pause again',
  ])
  await page.keyboard.press('F6')
  await expect(pressed.getByRole('button', { name: 'Resume' })).toBeFocused()
  await page.keyboard.press('Escape')
  await expect(pressed.getByRole('button', { name: 'Resume' })).toHaveCount(0)
  await pressed.getByRole('button', { name: 'Pause again' }).click()
  await expect(pressed.getByText('Taken back.')).toBeVisible()
  await expect(page.getByText('Paused').first()).toBeVisible()
  // It stays while it is looked at.
  await pressed.getByText('Taken back.').hover()
  await page.waitForTimeout(11_000)
  await expect(pressed.getByText('Taken back.')).toBeVisible()
  await page.mouse.move(5, 5)
  await expect(pressed.getByText('Taken back.')).toHaveCount(0, { timeout: 12_000 })
})
