import { expect } from '@playwright/test'
import { hold } from '../held.ts'
import { pathTo } from './find.ts'
import { test } from './loaded.ts'
import { read } from './read.ts'
import { sameDocument } from './same-document.ts'

const READY = 'Engine ready to fit'
const FIT = 'Engine and gearbox into the bay'

test('the engine is made ready to fit, released and received, and the lead’s refused start turns startable', async ({
  as,
}) => {
  const bexwater = await as('Jory Wenlock')
  const lead = await as('Mara Ellwood')
  await lead.goto(await pathTo(lead, 'stage', FIT))
  const stays = await sameDocument(lead)
  await expect(lead.getByText(/can’t start\..* 3 of \d+ conditions are not met/)).toBeVisible()
  await expect(lead.locator('.conds')).toContainText(READY)
  await expect(lead.locator('.conds')).toContainText('Engine is in Bexwater Engines’ custody')
  await expect(lead.locator('.conds')).toContainText('Engine is in use by')
  await expect(lead.getByRole('button', { name: /^Start \d+/ })).toHaveCount(0)

  await bexwater.goto(await pathTo(bexwater, 'stage', READY))
  await expect(bexwater.getByText(/^Ready to fit: \d+ waits for 2 checks/)).toBeVisible()
  await read(bexwater, 'oil pressure hot, 3,000 rev/min', '2.7')
  await expect(bexwater.getByText('2.7 bar · out of limits')).toBeVisible()
  await read(bexwater, 'oil pressure hot, 3,000 rev/min', '3.8')
  await expect(bexwater.getByText(/^Ready to fit: \d+ waits for 1 check/)).toBeVisible()
  await read(bexwater, 'compression spread, warm', '4.5')
  await hold(bexwater.getByRole('button', { name: /^Ready to fit: \d+/ }))
  await expect(bexwater.getByText('Signed off').first()).toBeVisible()
  await expect(lead.getByText(/can’t start\..* 1 of \d+ conditions is not met/)).toBeVisible()

  await bexwater.getByRole('link', { name: 'Handovers' }).click()
  const yours = bexwater.locator('section', {
    has: bexwater.getByRole('heading', { name: 'Yours to press' }),
  })
  await yours.getByRole('link', { name: /Engine/ }).click()
  await bexwater.getByLabel('In what condition does it go?').fill('Run in for two hours, drained.')
  await bexwater.getByLabel('How to treat it').fill('Lift by both eyes. Keep the sump plugged.')
  await bexwater.getByRole('button', { name: /^Release .*Engine/ }).click()
  await expect(bexwater.getByText('To be received').first()).toBeVisible()

  // The lead's other tab receives; the tab with the refused start is only looked at.
  const other = await lead.context().newPage()
  await other.goto(bexwater.url())
  await expect(other.getByText('Lift by both eyes.')).toBeVisible()
  await other.getByLabel('How many pieces do you count?').fill('1')
  await other.getByText('Accepted', { exact: true }).click()
  await other.getByRole('button', { name: /^Receive .*Engine/ }).click()
  await expect(other.getByText('Received').first()).toBeVisible()

  const start = lead.getByRole('button', { name: /^Start \d+/ })
  await expect(start).toBeVisible()
  await stays()
  await start.click()
  await expect(lead.getByText('In work').first()).toBeVisible()
  await expect(
    bexwater.getByText(/Tarn Lane Coachworks started \d+ · Engine and gearbox/),
  ).toBeVisible()
})
