import { expect, type Page } from '@playwright/test'
import { carPath, find, sendPast, shopPath } from './find.ts'
import { test } from './loaded.ts'

const CAR = 'Dunmore'

/** A stage of the lead's without any check, made by its manager; its address. */
async function aStage(manager: Page, name: string): Promise<string> {
  const car = await carPath(manager, CAR)
  const party = await find(manager, 'party', (one) => one.name === 'Tarn Lane Coachworks', car)
  expect((await sendPast(manager, 'stage.add', { name, party: party.id })).status).toBe(200)
  const stage = await find(manager, 'stage', (one) => one.name === name, car)
  return `${car}/stages/${stage.id}`
}

/** A phone made the shop's by the manager's link. */
async function aShopPhone(manager: Page, phone: Page, name: string): Promise<void> {
  await manager.goto(`${await shopPath(manager)}/set-up`)
  await manager.getByLabel('Name of a phone').fill(name)
  await manager.getByRole('button', { name: 'A link for another phone' }).click()
  const link = manager.locator('.link-text a').last()
  await phone.setViewportSize({ width: 390, height: 844 })
  await phone.goto((await link.getAttribute('href')) ?? '')
  await expect(phone.getByRole('heading', { name })).toBeVisible()
  await phone.getByRole('button', { name: 'Yes, this is the shop’s phone' }).click()
  await expect(phone.locator('.who-works')).toContainText(name)
}

/** Two taps. */
async function works(phone: Page, name: string): Promise<void> {
  await phone.locator('.who-works').click()
  await phone.getByRole('button', { name }).click()
  await expect(phone.locator('.who-works')).toContainText(name)
}

async function signOff(phone: Page): Promise<void> {
  const press = phone.getByRole('button', { name: /^Sign off/ }).first()
  await press.focus()
  await press.press('Enter')
  await press.press('Enter')
}

async function sign(phone: Page, name: string, code: string): Promise<void> {
  const own = phone.getByLabel(`Your own code, ${name}`).first()
  await own.fill(code)
  await own.press('Enter')
}

async function note(phone: Page, text: string): Promise<void> {
  await phone.getByLabel('A note').fill(text)
  await phone.getByRole('button', { name: 'Write the note' }).click()
  await expect(phone.getByLabel('A note')).toHaveValue('')
}

test('hands share a phone of the shop: two taps, their own code, the journal names them; and it is taken out', async ({
  as,
}) => {
  test.slow()
  const manager = await as('Mara Ellwood')
  // Whoever was signed in on it as themselves is so no longer.
  const bench = await as('Sil Harker')
  const stage = await aStage(manager, 'Bracket fettled')
  await aShopPhone(manager, bench, 'Metal bench phone')
  await expect(bench.locator('.who-works')).toContainText('Who works here?')

  await works(bench, 'Tobin Ashby')
  await bench.goto(stage)
  await manager.goto(stage)
  await bench.getByRole('button', { name: /^Start \d+/ }).click()
  await expect(bench.getByText('In work').first()).toBeVisible()
  await signOff(bench)
  await sign(bench, 'Tobin Ashby', '1593')
  await expect(bench.getByText('That is not your code.')).toBeVisible()
  await sign(bench, 'Tobin Ashby', '4807')
  await expect(bench.getByText('Signed off').first()).toBeVisible()
  // It comes to the manager by itself, with the name of who signed.
  await expect(manager.getByText('Signed off').first()).toBeVisible()
  await expect(manager.getByText(/Tobin Ashby/).first()).toBeVisible()

  await works(bench, 'Sil Harker')
  await note(bench, 'Swarf cleared from the bench')
  await manager.goto(stage.replace(/stages\/.*/, 'journal'))
  const entry = (text: RegExp) => manager.getByRole('heading', { name: text }).first()
  await expect(entry(/^Tobin Ashby, on Metal bench phone, signed off/)).toBeVisible()
  await expect(entry(/^Sil Harker, on Metal bench phone, wrote/)).toBeVisible()

  await manager.goto(`${await shopPath(manager)}/set-up`)
  const row = manager.locator('#phones li', { hasText: 'Metal bench phone' })
  await row.getByText('Bring in again, or take out').click()
  await row.getByRole('button', { name: 'Take Metal bench phone out' }).click()
  await expect(row).toHaveCount(0)
  await bench.waitForURL(/sign-in/)
})

test('what is signed without a network waits for its hand’s code, and what was pressed after it waits behind', async ({
  as,
}) => {
  test.slow()
  const manager = await as('Mara Ellwood')
  const bench = await as('Tobin Ashby')
  const stage = await aStage(manager, 'Bracket drilled')
  await aShopPhone(manager, bench, 'Drill phone')
  await works(bench, 'Tobin Ashby')
  await bench.goto(stage)
  await bench.getByRole('button', { name: /^Start \d+/ }).click()
  await expect(bench.getByText('In work').first()).toBeVisible()
  await expect(bench.getByText('Live', { exact: true })).toBeVisible()

  await bench.context().setOffline(true)
  await expect(bench.getByText(/no network/)).toBeVisible()
  await signOff(bench)
  await expect(bench.getByText(/^1 unsent/)).toBeVisible()
  await works(bench, 'Sil Harker')
  await note(bench, 'Drill is blunt')
  await expect(bench.getByText(/^2 unsent/)).toBeVisible()

  await bench.context().setOffline(false)
  await bench.getByRole('link', { name: /^Tobin Ashby signs first/ }).click()
  await bench.getByRole('button', { name: 'Tobin Ashby signs' }).click()
  await sign(bench, 'Tobin Ashby', '4807')
  await expect(bench.getByText('Everything is sent')).toBeVisible()
  await manager.goto(stage.replace(/stages\/.*/, 'journal'))
  const lines = manager.getByRole('heading', { name: /, on Drill phone,/ })
  await expect(lines.nth(0)).toHaveText(/^Sil Harker, on Drill phone, wrote/)
  await expect(lines.nth(1)).toHaveText(/^Tobin Ashby, on Drill phone, signed off/)
})
