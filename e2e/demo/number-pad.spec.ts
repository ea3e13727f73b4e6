import { expect } from '@playwright/test'
import { pathTo } from './find.ts'
import { test } from './loaded.ts'

const STAGE = 'Engine ready to fit'
const CHECK = 'oil pressure hot, 3,000 rev/min'
/** Least height of a key, in px: a gloved thumb hits it. */
const LEAST_KEY = 54

test('a reading is typed on big keys that say what it is worth before it is sent, and stand still under the thumb', async ({
  as,
}) => {
  const page = await as('Jory Wenlock')
  await page.goto(await pathTo(page, 'stage', STAGE))
  const row = page.locator('li.check', { has: page.getByRole('heading', { name: CHECK }) })
  const field = row.getByLabel('Reading, bar')
  await field.tap()
  const keys = row.getByRole('group', { name: /^Keys for the reading/ })
  await expect(keys).toBeVisible()
  // The phone's own keyboard would cover them.
  await expect(field).toHaveAttribute('inputmode', 'none')
  await expect(row.getByText('limits 3.1 to 4.5 bar').last()).toBeVisible()
  const sizes = await keys
    .getByRole('button')
    .evaluateAll((all) =>
      all.map((key) => Math.min(key.clientHeight, key.getBoundingClientRect().width)),
    )
  expect(Math.min(...sizes)).toBeGreaterThanOrEqual(LEAST_KEY)
  // No reading of this check lies under nought.
  await expect(keys.getByRole('button', { name: /^Minus/ })).toHaveCount(0)

  const press = (name: string) => keys.getByRole('button', { name, exact: true }).tap()
  const five = await keys.getByRole('button', { name: '5' }).boundingBox()
  for (const name of ['2', 'Point', '7']) await press(name)
  await expect(row.getByText('2.7 bar · under the limits, 3.1 to 4.5 bar').first()).toBeVisible()
  expect(await keys.getByRole('button', { name: '5' }).boundingBox()).toEqual(five)
  await press('Clear all of it')
  for (const name of ['3', 'Point', '8', '9']) await press(name)
  await press('Rub out the last one')
  await expect(row.getByText('3.8 bar · within 3.1 to 4.5 bar').first()).toBeVisible()
  // A keyboard goes on where the thumb left off.
  await page.keyboard.type('5')
  await expect(field).toHaveValue('3.85')
  await page.keyboard.press('Enter')
  await expect(row.getByText('3.85 bar', { exact: true })).toBeVisible()
  await expect(keys).toHaveCount(0)
})

test('at a desk the reading is a plain field', async ({ browser, yard, as }) => {
  const phone = await as('Jory Wenlock')
  const path = await pathTo(phone, 'stage', STAGE)
  const context = await browser.newContext({
    baseURL: yard.url,
    storageState: await phone.context().storageState(),
    viewport: { width: 1280, height: 800 },
    isMobile: false,
    hasTouch: false,
  })
  const page = await context.newPage()
  await page.goto(path)
  const row = page.locator('li.check', { has: page.getByRole('heading', { name: CHECK }) })
  await row.getByLabel('Reading, bar').fill('2.7')
  await expect(row.getByText('2.7 bar · under the limits, 3.1 to 4.5 bar').first()).toBeVisible()
  await expect(row.getByRole('button')).toHaveText(['Enter'])
  await context.close()
})
