import { type Browser, expect, type Page } from '@playwright/test'
import { MANAGER, setUpFirstShop, signIn } from './first-shop.ts'
import { test } from './yard.ts'

test.describe.configure({ mode: 'serial' })

const OWNER = { name: 'Bea Loftus', email: 'bea@owner.example', password: 'ivory over oxblood' }

const FAULTY = `stage;shop;assembly;hours least;hours likely;hours most;after;checks;hold;colour
Strip the shell;Mill Race Coachworks;Shell;16;24,5;32;;photo each side;
Blast the shell;Mill Race Coachwork;Shell;4;6;8;Strip the shell;;
Epoxy the shell;Mill Race Coachworks;Shell;4;6;8;Blast teh shell+24h<72h;tick edges covered;
Rebuild the engine;Mill Race Coachworks;Engine;60;eighty;120;;reading oil pressure 3.1..4.5 bar;hold: owner
`
const MENDED = FAULTY.replace('Mill Race Coachwork;', 'Mill Race Coachworks;')
  .replace('Blast teh', 'Blast the')
  .replace('eighty', '80')

/** Where the project of these tests stands, once it is made. */
let car = ''

async function aPhone(browser: Browser, baseURL: string | undefined): Promise<Page> {
  const context = await browser.newContext(baseURL === undefined ? {} : { baseURL })
  return context.newPage()
}

async function asManager(page: Page): Promise<void> {
  await page.goto('/sign-in')
  await signIn(page, MANAGER.email, MANAGER.password)
  // Who has one shop is led to its day sheet.
  await expect(page).toHaveURL(/\/shops\/shp_/)
}

async function choose(page: Page, name: string, text: string): Promise<void> {
  const file = { name, mimeType: 'text/csv', buffer: Buffer.from(text, 'latin1') }
  await page.getByLabel('The file').setInputFiles(file)
  await expect(page.getByRole('heading', { name })).toBeVisible()
}

test('the first visitor makes the lead shop and is its manager', async ({ page }) => {
  await setUpFirstShop(page)
  await expect(page.getByText(MANAGER.name).first()).toBeVisible()
  await page.getByRole('link', { name: new RegExp(MANAGER.shop) }).click()
  await expect(page).toHaveURL(/\/shops\/shp_/)
  // The page is for the first visit alone.
  await page.goto('/set-up')
  await expect(page).not.toHaveURL(/\/set-up/)
})

test('the manager begins a car with its owner, parties and assemblies', async ({ page }) => {
  await asManager(page)
  await page.getByRole('link', { name: 'Projects' }).click()
  await page.getByText('Begin a project').click()
  await page.getByLabel('Name of the car').fill('Calder roadster')
  await page.getByLabel('Year').fill('1954')
  await page.getByLabel('Name of the owner').fill(OWNER.name)
  await page.getByRole('button', { name: 'Create the project' }).click()
  await expect(page).toHaveURL(/\/p\/prj_[^/]+\/set-up$/)
  car = new URL(page.url()).pathname.replace('/set-up', '')

  const parties = page.locator('section', {
    has: page.getByRole('heading', { name: 'Parties', exact: true }),
  })
  await parties.getByLabel('Name').fill('Weir Engines')
  await parties.getByRole('button', { name: 'Add Weir Engines' }).click()
  await expect(parties.getByText('Weir Engines', { exact: true })).toBeVisible()

  const assemblies = page.locator('section', {
    has: page.getByRole('heading', { name: 'Assemblies', exact: true }),
  })
  await assemblies.getByLabel('Name').fill('Shell')
  await assemblies.getByRole('button', { name: 'Add Shell' }).click()
  await expect(assemblies.getByText('Shell', { exact: true })).toBeVisible()
})

test('a build order comes in whole or not at all: what is wrong in it is named first', async ({
  page,
}) => {
  await asManager(page)
  await page.goto(`${car}/set-up/import`)
  await choose(page, 'order.csv', FAULTY)
  const preview = page.locator('section', {
    has: page.getByRole('heading', { name: 'order.csv' }),
  })
  await expect(preview).toContainText('3 things are wrong in it.')
  await expect(preview).toContainText('There is no shop “Mill Race Coachwork”')
  await expect(preview).toContainText('Did you mean “Mill Race Coachworks”?')
  await expect(preview).toContainText('There is no stage “Blast teh shell”')
  await expect(preview).toContainText('“eighty” is no number')
  await expect(preview).toContainText('colour')
  // Nothing comes until what is left out was accepted.
  await expect(page.getByRole('button', { name: /^Import the build order/ })).toBeDisabled()
  await page.goto(`${car}/build-order`)
  await expect(page.getByText('Strip the shell')).toHaveCount(0)

  await page.goto(`${car}/set-up/import`)
  await choose(page, 'mended.csv', MENDED)
  await expect(page.getByText('Nothing is wrong in it.')).toBeVisible()
  await page.getByRole('button', { name: 'Import the build order: 4 stages' }).click()
  await expect(page).toHaveURL(new RegExp(`${car}/build-order$`))
  for (const stage of ['Strip the shell', 'Blast the shell', 'Epoxy the shell']) {
    await expect(page.getByText(stage).first()).toBeVisible()
  }
})

test('the owner joins by the link that the manager hands over, and sees the car', async ({
  page,
  browser,
  baseURL,
}) => {
  await asManager(page)
  await page.goto(`${car}/people`)
  const owner = page.locator('section', {
    has: page.getByRole('heading', { name: OWNER.name, exact: true }),
  })
  await owner.getByLabel('Their name').fill(OWNER.name)
  await owner.getByLabel('Their e-mail address').fill(OWNER.email)
  await owner.getByRole('button', { name: 'Invite' }).click()
  await expect(owner.getByRole('img', { name: /QR code of the invitation/ })).toBeVisible()
  const link = await owner.locator('.link-text a').getAttribute('href')

  const phone = await aPhone(browser, baseURL)
  await phone.goto(link ?? '')
  await phone.getByLabel('Password').fill(OWNER.password)
  await phone.getByRole('button', { name: /^Join/ }).click()
  await phone.getByRole('link', { name: /Calder roadster/ }).click()
  await expect(phone.getByRole('heading', { name: 'Calder roadster' })).toBeVisible()
  await expect(phone.getByRole('link', { name: 'My car' })).toBeVisible()
  // A link is used once.
  await phone.goto(link ?? '')
  await expect(phone.getByText('This invitation leads nowhere')).toBeVisible()
  await phone.context().close()
})

test('a link in a message opens the thing itself after sign-in', async ({
  page,
  browser,
  baseURL,
}) => {
  await asManager(page)
  await page.goto(`${car}/build-order`)
  await page
    .getByRole('link', { name: /Epoxy the shell/ })
    .first()
    .click()
  await expect(page).toHaveURL(/\/stages\/stg_/)

  const phone = await aPhone(browser, baseURL)
  await phone.goto(page.url())
  await expect(phone).toHaveURL(/\/sign-in/)
  await signIn(phone, OWNER.email, OWNER.password)
  await expect(phone).toHaveURL(page.url())
  await expect(phone.getByRole('heading', { name: /Epoxy the shell/ })).toBeVisible()
  await phone.context().close()
})

test('signing out everywhere ends every other session at once', async ({
  page,
  browser,
  baseURL,
}) => {
  const lost = await aPhone(browser, baseURL)
  await asManager(lost)
  await lost.goto(car)
  await expect(lost.getByText('Live', { exact: true })).toBeVisible()

  await asManager(page)
  await page.goto('/account')
  await page.getByRole('button', { name: 'Sign out everywhere' }).click()
  await expect(page).toHaveURL(/\/sign-in/)
  await expect(lost).toHaveURL(/\/sign-in/, { timeout: 2_000 })
  await lost.goto(car)
  await expect(lost).toHaveURL(/\/sign-in/)
  await lost.context().close()
})

test('a removed person is out within two seconds, with the page that they had open', async ({
  page,
  browser,
  baseURL,
}) => {
  const phone = await aPhone(browser, baseURL)
  await phone.goto(car)
  await signIn(phone, OWNER.email, OWNER.password)
  await expect(phone.getByText('Live', { exact: true })).toBeVisible()

  await asManager(page)
  await page.goto(`${car}/people`)
  await page.getByText('Remove from the project').click()
  await page.getByRole('button', { name: `Remove ${OWNER.name}` }).click()
  await expect(page.getByText('Removed.')).toBeVisible()
  const car_ = phone.getByRole('heading', { name: 'Calder roadster' })
  await expect(car_).toHaveCount(0, { timeout: 2_000 })
  // The phone goes there by itself; a second journey in the middle of it would be broken off.
  await expect(phone).toHaveURL(/\/sign-in/)
  await phone.goto(car)
  await expect(phone).toHaveURL(/\/sign-in/)
  await expect(car_).toHaveCount(0)
  await phone.context().close()
})

test('a build order comes out of the stage library: what appears and what is left out is shown first', async ({
  page,
}) => {
  await asManager(page)
  await page.goto('/projects/new')
  await page.getByLabel('Name of the car').fill('Fell saloon')
  await page.getByLabel('Name of the owner').fill('Ada Fenwick')
  await page.getByRole('button', { name: 'Create the project' }).click()
  await page.getByRole('link', { name: 'From the stage library' }).click()
  await page.getByLabel('What is restored').selectOption('body')
  await expect(page.getByText(/^Left out: \d+, and why$/)).toBeVisible()
  await page.getByText(/^Lacquer: /).click()
  await page.getByRole('button', { name: 'Make the build order' }).click()
  await expect(page.getByText('There are stages already.')).toBeVisible()
  await page.getByRole('link', { name: 'Open the build order' }).click()
  await expect(page.getByText(/Receive the car: custody/).first()).toBeVisible()
})
