import { expect, type Page } from '@playwright/test'
import { pathTo } from './find.ts'
import { test } from './loaded.ts'

const STAGE = 'Engine ready to fit'
const CHECK = 'oil pressure hot, 3,000 rev/min'

const result = (page: Page) =>
  page.locator('section', { has: page.getByRole('heading', { name: 'Comes to' }) })
const row = (page: Page) =>
  page.locator('li.check', { has: page.getByRole('heading', { name: CHECK }) })

test('a sum is worked at the stage, with big keys, and stands there as a reading and as a note', async ({
  as,
}) => {
  const page = await as('Jory Wenlock')
  await page.goto(await pathTo(page, 'stage', STAGE))
  await page.getByRole('link', { name: 'Work it out: bench sums' }).tap()
  await page.getByLabel('Find a sum').fill('another unit figure')
  await page.getByRole('link', { name: 'A figure in another unit' }).tap()
  await page.getByRole('textbox', { name: 'Figure', exact: true }).tap()
  const keys = page.getByRole('group', { name: 'Keys for Figure' })
  for (const name of ['5', '5']) await keys.getByRole('button', { name, exact: true }).tap()
  await expect(result(page).getByText('Still to type: From · To')).toBeVisible()
  await page.getByRole('combobox', { name: 'From' }).fill('psi')
  await page.getByRole('combobox', { name: 'To' }).fill('bar')
  await expect(result(page).getByRole('definition')).toHaveText('3.7921 bar')
  await page.getByRole('link', { name: /^Put it on/ }).tap()

  const bench = page.locator('#from-bench')
  await expect(bench.getByRole('heading', { name: 'A figure in another unit' })).toBeVisible()
  await bench
    .getByLabel('As the reading of a check')
    .selectOption({ label: `It is, 3.7921 bar: O${CHECK.slice(1)}` })
  await expect(bench.getByText(/within 3\.1 to 4\.5 bar/)).toBeVisible()
  await bench.getByRole('button', { name: 'Enter 3.792 bar' }).tap()
  await expect(
    row(page)
      .getByText(/^3\.792\d* bar/)
      .first(),
  ).toBeVisible()
  await expect(bench).toHaveCount(0)

  await page.getByRole('link', { name: 'Work it out: bench sums' }).tap()
  await page.getByRole('link', { name: 'A figure in another unit' }).tap()
  // What was typed is there still.
  await page.getByRole('link', { name: /^Put it on/ }).tap()
  await bench.getByRole('button', { name: /as a note/ }).tap()
  await expect(page.getByText('A figure in another unit: It is 3.7921 bar.')).toBeVisible()
})

test('what is typed stays through a reload, a doubtful figure is asked about, and a blank is named', async ({
  as,
}) => {
  const page = await as('Sil Harker', '/sums/wet-film')
  await page.getByRole('textbox', { name: /^Dry film wanted/ }).fill('1,250')
  await page.getByRole('textbox', { name: /^Volume solids/ }).fill('48')
  await page.getByRole('button', { name: '1250', exact: true }).tap()
  await expect(
    result(page).getByText('Still to type: Thinned by volume of the paint'),
  ).toBeVisible()
  await page.getByRole('textbox', { name: /^Thinned/ }).fill('0')
  await expect(result(page).getByRole('definition')).toHaveText('2604.2 µm')
  await page.reload()
  await expect(result(page).getByRole('definition')).toHaveText('2604.2 µm')
  await page.getByLabel(/^Unit of Dry film/).selectOption('thou')
  await page.getByRole('textbox', { name: /^Dry film wanted/ }).fill('2')
  await expect(result(page).getByRole('definition')).toHaveText('105.8 µm')
})

test('the sums work without a network', async ({ as, yard }) => {
  const page = await as('Sil Harker', '/sums')
  await page.waitForFunction(
    async () =>
      (await navigator.serviceWorker.ready).active?.state === 'activated' &&
      navigator.serviceWorker.controller !== null,
  )
  await yard.stop()
  await page.goto('/sums')
  await page.getByRole('link', { name: 'Dew point and the surface above it' }).tap()
  await page.getByRole('textbox', { name: /^Air/ }).fill('18')
  await page.getByRole('textbox', { name: /^Relative humidity/ }).fill('70')
  await page.getByRole('textbox', { name: /^Surface/ }).fill('15.4')
  await expect(result(page).getByText('Too near the dew point: on the line')).toBeVisible()
})

test('who is not signed in is asked to sign in first, and then led to the sum', async ({
  page,
}) => {
  await page.goto('/sums/wet-film')
  await expect(page).toHaveURL(/\/sign-in\?next=/)
})
