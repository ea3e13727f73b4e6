import { expect, type Page } from '@playwright/test'
import { hold } from '../held.ts'
import { carPath, find, pathTo, sendPast } from './find.ts'
import { test } from './loaded.ts'
import { sameDocument } from './same-document.ts'

const ORDER = 'Carburettors: new spindles and jets, bodies re-bushed'
const BROUGHT = 'Carburettors re-bushed and flow-matched'

/** The sums of a table of before and after, line by line. */
const sums = (page: Page) => page.locator('table.does tbody td.r').allInnerTexts()

test('the owner opens a change order from a link, sees what a yes does, and the yes can’t be changed', async ({
  as,
  browser,
  yard,
}) => {
  const shop = await as('Jory Wenlock')
  const brought = await pathTo(shop, 'stage', BROUGHT)
  const link = await pathTo(shop, 'changeOrder', ORDER)
  await shop.goto(brought)
  const stays = await sameDocument(shop)
  await expect(shop.getByText(/can’t start\./)).toBeVisible()
  await expect(shop.locator('.conds')).toContainText(/[Cc]hange order 7/)

  const context = await browser.newContext({ baseURL: yard.url })
  const owner = await context.newPage()
  await owner.goto(link)
  await expect(owner).toHaveURL(/\/sign-in/)
  await owner.getByRole('button', { name: 'Sign in as Ines Halloran' }).click()
  await expect(owner).toHaveURL(new RegExp(`${link}$`))

  await expect(owner.getByText('Bodies bushed and line-reamed')).toBeVisible()
  await expect(owner.getByText('Less: rebuild kits in the estimate')).toBeVisible()
  await expect(owner.getByText('Tax 20 %').first()).toBeVisible()
  const does = owner.locator('section', {
    has: owner.getByRole('heading', { name: 'What your yes does' }),
  })
  await expect(does).toContainText('over the first estimate')
  const before = await sums(owner)
  // 3 × 46.00 + 6 × 64.00 + 2.5 × 64.00 − 95.00 = 587.00, and 20 % tax on each line.
  const yes = owner.getByRole('button', { name: /^Approve £704\.40/ })
  // Lifting early does nothing.
  await yes.click()
  await expect(yes).toBeVisible()
  await hold(yes)
  await expect(owner.getByText('Your yes is kept, with what you saw.')).toBeVisible()

  await expect(shop.getByRole('button', { name: /^Start \d+/ })).toBeVisible()
  await stays()

  // Nothing on the screen changes it, then or later.
  await expect(owner.getByRole('button', { name: /Approve|Decline|Withdraw/ })).toHaveCount(0)
  await owner.reload()
  await expect(owner.getByText('What the yes did')).toBeVisible()
  expect(await sums(owner)).toEqual(before)
  await expect(owner.getByText(/Check of what was shown: [0-9a-f]{64}/)).toBeVisible()
  await expect(owner.getByRole('button', { name: /Approve|Decline|Withdraw/ })).toHaveCount(0)

  // Nor does anything past the screen.
  const order = await find(owner, 'changeOrder', ({ title }) => title === ORDER)
  const asked = { changeOrder: order.id }
  for (const [page, name, input] of [
    [owner, 'changeOrder.decline', asked],
    [owner, 'changeOrder.approve', { ...asked, shownHash: 'a'.repeat(64) }],
    [shop, 'changeOrder.withdraw', { ...asked, reason: 'Dearer after all' }],
    [shop, 'changeOrder.revise', { ...asked, title: 'Carburettors, dearer' }],
  ] as const) {
    const { status, body } = await sendPast(page, name, input)
    expect([400, 403, 409], `${name}: ${body}`).toContain(status)
  }
  expect(await find(owner, 'changeOrder', ({ title }) => title === ORDER)).toEqual(order)

  await owner.goto(`${await carPath(owner)}/journal`)
  await expect(
    owner.getByText(`Ines Halloran approved change order 7, ${ORDER}`).first(),
  ).toBeVisible()
  await context.close()
})
