import { type Browser, expect, type Page } from '@playwright/test'
import type { TestServer } from '../../test/a-server.ts'
import { goTo, pressTwice, tabTo } from './keys.ts'
import { test } from './loaded.ts'

/** A desk: no thumb and, here, no mouse either. Signed in by the keys as well. */
async function aDesk(browser: Browser, yard: TestServer, name: string): Promise<Page> {
  const context = await browser.newContext({
    baseURL: yard.url,
    viewport: { width: 1280, height: 800 },
    isMobile: false,
    hasTouch: false,
  })
  const page = await context.newPage()
  await page.goto('/sign-in')
  await tabTo(page, new RegExp(`Sign in as ${name}`))
  await page.keyboard.press('Enter')
  await expect(page).not.toHaveURL(/\/sign-in/)
  return page
}

test('without a mouse: the engine is read off, marked ready to fit, and released', async ({
  browser,
  yard,
}) => {
  const page = await aDesk(browser, yard, 'Jory Wenlock')
  await goTo(page, 'ready to fit', /Engine ready to fit/)
  await expect(page).toHaveURL(/\/stages\//)
  await expect(page.getByText(/^Ready to fit: \d+ waits for 2 checks/)).toBeVisible()
  for (const [unit, figure] of [
    ['bar', '3.8'],
    ['%', '4.5'],
  ] as const) {
    await tabTo(page, new RegExp(`^Reading, ${unit}`))
    await page.keyboard.type(figure)
    await expect(page.getByText(`${figure} ${unit} · within`).first()).toBeVisible()
    await page.keyboard.press('Enter')
    await expect(page.getByText(`${figure} ${unit}`, { exact: true })).toBeVisible()
  }
  await pressTwice(page, /^Ready to fit: \d+/)
  await expect(page.getByText('Signed off').first()).toBeVisible()

  await goTo(page, 'handovers', /^Handovers/)
  await expect(page).toHaveURL(/\/handovers$/)
  await expect(page.getByRole('heading', { name: 'Yours to press' })).toBeVisible()
  await tabTo(page, /· Engine/)
  await page.keyboard.press('Enter')
  await tabTo(page, /^In what condition does it go/)
  await page.keyboard.type('Run in for two hours, drained.')
  await tabTo(page, /^Release .*Engine/)
  await page.keyboard.press('Enter')
  await expect(page.getByText('To be received').first()).toBeVisible()
  // And taken back, by the keys that lead to the line at the foot.
  const back = page.locator('.toast').getByRole('button', { name: 'Take it back' })
  await expect(back).toBeVisible()
  await page.keyboard.press('F6')
  await expect(back).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByText('Taken back.')).toBeVisible()
  await page.context().close()
})

test('without a mouse: the trimmer claims the shell in an open window', async ({
  browser,
  yard,
}) => {
  const page = await aDesk(browser, yard, 'Sorrel Penn')
  await goTo(page, 'headlining in', /Headlining in the empty shell/)
  await expect(page).toHaveURL(/\/stages\//)
  await tabTo(page, /^Claim the slot/)
  await page.keyboard.press('Enter')
  await expect(page.getByText('open window').first()).toBeVisible()
  await tabTo(page, /^Claim /)
  await page.keyboard.press('Enter')
  await expect(page.getByText('Agreed. It stands in the diary.')).toBeVisible()
  await page.context().close()
})

test('without a mouse: the owner finds the change order among the others and approves it', async ({
  browser,
  yard,
}) => {
  const page = await aDesk(browser, yard, 'Ines Halloran')
  await tabTo(page, /^My yes/)
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/\/change-orders$/)
  // Through the rows by arrows and by letters.
  const orders = page.locator('.ruled a')
  await expect(orders.nth(1)).toBeVisible()
  await tabTo(page, /^\d+ · |^\d/)
  await expect(orders.first()).toBeFocused()
  await page.keyboard.press('End')
  await page.keyboard.press('Home')
  await expect(orders.first()).toBeFocused()
  await page.keyboard.type('carb')
  const order = page.locator('.ruled a', { hasText: 'Carburettors' }).first()
  await expect(order).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByLabel('What your yes does')).toBeVisible()
  await pressTwice(page, /^Approve £704\.40/)
  await expect(page.getByText('Your yes is kept, with what you saw.')).toBeVisible()
  await page.context().close()
})

test('a question mark shows every key, and Escape gives the focus back', async ({
  browser,
  yard,
}) => {
  const page = await aDesk(browser, yard, 'Mara Ellwood')
  const violations: string[] = []
  page.on('console', (message) => {
    if (/content security/i.test(message.text())) violations.push(message.text())
  })
  await expect(page).toHaveURL(/\/shops\//)
  await tabTo(page, /^Go to/)
  await page.keyboard.press('?')
  await expect(page.getByRole('dialog', { name: 'Keys' })).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  await expect(page.getByRole('button', { name: /^Go to/ })).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog', { name: 'Go to' })).toBeVisible()
  await page.keyboard.type('zzzz')
  await expect(page.getByText('Nothing by that name', { exact: false })).toBeVisible()
  // The first clears what was typed, the second puts the sheet away.
  await page.keyboard.press('Escape')
  await expect(page.getByRole('searchbox')).toHaveValue('')
  await page.keyboard.press('Escape')
  await expect(page.getByRole('dialog')).toHaveCount(0)
  expect(violations).toEqual([])
  await page.context().close()
})
