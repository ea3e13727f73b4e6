import { expect, type Page } from '@playwright/test'
import { pathTo } from './find.ts'
import { test } from './loaded.ts'

const READY = 'Engine ready to fit'

/** Keeps back whatever script the page asks for once it has been loaded, until the answer is called. */
async function holdTheRest(page: Page): Promise<() => Promise<void>> {
  let go = () => {}
  const gone = new Promise<void>((resolve) => {
    go = resolve
  })
  let loaded = false
  page.on('load', () => {
    loaded = true
  })
  page.on('request', (request) => {
    if (request.isNavigationRequest()) loaded = false
  })
  await page.route('**/_next/static/**/*.js', async (route) => {
    if (loaded) await gone
    await route.continue()
  })
  return async () => {
    go()
    await expect(page.getByText('Live', { exact: true })).toBeVisible()
  }
}

const complaints = (page: Page): string[] => {
  const said: string[] = []
  page.on('pageerror', ({ message }) => said.push(message))
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') said.push(message.text())
  })
  return said
}

test('a page is all there before its code is: what is written and pressed meanwhile counts, once', async ({
  as,
}) => {
  const phone = await as('Wyn Pardoe')
  const path = await pathTo(phone, 'stage', READY)
  const said = complaints(phone)
  const release = await holdTheRest(phone)
  await phone.goto(path, { waitUntil: 'load' })
  await expect(phone.getByRole('heading', { name: 'Notes', exact: true })).toBeVisible()
  const before = await phone.locator('main').textContent()
  await phone.getByLabel('A note').fill('The rocker cover weeps at the back.')
  await phone.getByRole('checkbox', { name: 'Shared with the other parties' }).uncheck()
  await phone.getByRole('button', { name: 'Write the note' }).click()
  await phone.getByRole('button', { name: 'Write the note' }).click()
  await release()
  await expect(phone.getByText('The rocker cover weeps at the back.')).toHaveCount(1)
  await expect(phone.getByText('private to your shop')).toHaveCount(1)
  await expect(phone.getByLabel('A note')).toHaveValue('')
  await expect(
    phone.getByRole('checkbox', { name: 'Shared with the other parties' }),
  ).not.toBeChecked()
  expect(before).toContain('Connecting…')
  expect(said).toEqual([])
})

test('links lead on before the code is there, and between the screens of a project the record stays', async ({
  as,
}) => {
  const phone = await as('Mara Ellwood')
  const path = await pathTo(phone, 'stage', READY)
  const release = await holdTheRest(phone)
  await phone.goto(path, { waitUntil: 'load' })
  await phone.getByRole('link', { name: 'Handovers' }).click()
  await expect(phone.getByRole('link', { name: 'Prepare a handover' })).toBeVisible()
  await release()

  const asked: string[] = []
  phone.on('request', (request) => asked.push(request.url()))
  await phone.getByRole('link', { name: 'Build order', exact: true }).click()
  await expect(phone).toHaveURL(/build-order$/)
  await phone.getByRole('link', { name: 'Project', exact: true }).click()
  await expect(phone.getByRole('heading', { name: 'More of it' })).toBeVisible()
  await expect(phone.getByText('Live', { exact: true })).toBeVisible()
  expect(asked.filter((url) => /\/api\/projects|socket\.io/.test(url))).toEqual([])
})
