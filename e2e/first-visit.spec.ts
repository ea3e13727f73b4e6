import { expect } from '@playwright/test'
import { faultsAt } from './faults.ts'
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

test('the first page can be read and pressed on a phone, by day and by night', async ({ page }) => {
  expect(await faultsAt(page, '/set-up')).toEqual([])
})

test('what keeps a page from being read or pressed is found', async ({ page }) => {
  await page.route('**/set-up', async (route) => {
    const response = await route.fetch()
    const spoilt =
      '<main><a href="/far" style="display:block;margin-top:200px">Far</a><button style="position:absolute;top:0">Near</button><input type="text"><p style="width:700px;color:#bbb;background:#ccc">Wide and faint</p></main>'
    await route.fulfill({
      response,
      body: `<!doctype html><html lang="en"><title>x</title><meta name="viewport" content="width=device-width, initial-scale=1">${spoilt}`,
    })
  })
  const found = (await faultsAt(page, '/set-up')).join('\n')
  for (const fault of ['color-contrast', 'label', 'too small', 'out of order', 'at 390', 'at 320'])
    expect(found).toContain(fault)
})
