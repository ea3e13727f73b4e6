import { expect } from '@playwright/test'
import { test } from './yard.ts'

test('the first page stands in our own faces, with nothing blocked by its content policy', async ({
  page,
}) => {
  const complaints: string[] = []
  page.on('console', (message) => {
    if (message.type() === 'error') complaints.push(message.text())
  })
  page.on('pageerror', (error) => complaints.push(String(error)))
  await page.goto('/')
  await expect(page.getByRole('heading').first()).toBeVisible()
  await page.waitForLoadState('networkidle')
  const faces = await page.evaluate(() =>
    [...document.fonts].filter((face) => face.status === 'loaded').map((face) => face.family),
  )
  expect(faces.length).toBeGreaterThan(0)
  expect(complaints).toEqual([])
})
