import { expect, type Page } from '@playwright/test'
import { carPath, find, sendPast } from './find.ts'
import { test } from './loaded.ts'

const CAR = 'Dunmore'
const STAGE = 'Springs and axles stripped, gauged'
const READING = 'camber of each spring'

/** The stage that a hand of the lead works on, as whoever looks at that page has it. */
async function stagePath(page: Page): Promise<string> {
  const car = await carPath(page, CAR)
  const { id } = await find(page, 'stage', ({ name }) => name === STAGE, car)
  return `${car}/stages/${id}`
}

const check = (page: Page, name: string) =>
  page.locator('li.check', { has: page.getByRole('heading', { name }) })

async function writeNote(page: Page, text: string): Promise<void> {
  await page.getByLabel('A note').fill(text)
  await page.getByRole('button', { name: 'Write the note' }).click()
  await expect(page.getByLabel('A note')).toHaveValue('')
}

test('what is pressed without a network goes out once it is back, in order', async ({ as }) => {
  const hand = await as('Sil Harker')
  const lead = await as('Mara Ellwood')
  const path = await stagePath(hand)
  await hand.goto(path)
  await expect(hand.getByText('Live', { exact: true })).toBeVisible()

  await hand.context().setOffline(true)
  await writeNote(hand, 'Leaf two is cracked at the eye.')
  await expect(hand.getByText(/^1 unsent, the oldest since \d\d:\d\d today$/)).toBeVisible()
  await check(hand, READING)
    .getByLabel(/^Reading/)
    .fill('38')
  await check(hand, READING).getByRole('button', { name: 'Enter', exact: true }).click()
  await hand.getByRole('button', { name: /^Pause \d+/ }).click()
  await expect(hand.getByText('Paused').first()).toBeVisible()
  await writeNote(hand, 'Waiting for the new leaf.')
  await expect(hand.getByText(/^4 unsent/)).toBeVisible()

  const car = await carPath(lead, CAR)
  const { id } = await find(lead, 'check', ({ name }) => name === READING, car)
  await lead.goto(path)
  expect((await sendPast(lead, 'check.record', { check: id, value: 36 })).status).toBe(200)

  await hand.context().setOffline(false)
  await expect(hand.getByText('1 refused on arrival')).toBeVisible()
  await expect(check(hand, READING).getByLabel(/^Reading/)).toHaveValue('38')
})
