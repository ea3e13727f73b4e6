import { expect } from '@playwright/test'
import { carPath, find, pathTo } from './find.ts'
import { test } from './loaded.ts'
import { sameDocument } from './same-document.ts'

const HEADLINING = 'Headlining in the empty shell'

test('the trimmer takes the shell in an open window, the rival is told who has it, the lead sees it', async ({
  as,
}) => {
  const trimmer = await as('Sorrel Penn')
  const rival = await as('Ivo Quill')
  const lead = await as('Mara Ellwood')
  const car = await carPath(lead)
  const { id: shell } = await find(lead, 'assembly', ({ name }) => name === 'Shell')
  await lead.goto(`${car}/windows?assembly=${shell}`)
  const stays = await sameDocument(lead)

  await trimmer.goto(await pathTo(trimmer, 'stage', HEADLINING))
  await expect(trimmer.locator('.conds')).toContainText(/slot/)
  await trimmer.getByRole('link', { name: 'Claim the slot' }).first().click()
  await expect(trimmer.getByText('open window').first()).toBeVisible()
  await rival.goto(`${car}/windows?assembly=${shell}`)
  await expect(rival.getByText('open window').first()).toBeVisible()

  await trimmer.getByRole('button', { name: /^Claim / }).click()
  await expect(trimmer.getByText('Agreed. It stands in the diary.')).toBeVisible()
  const slots = lead.locator('section', {
    has: lead.getByRole('heading', { name: 'Slots', exact: true }),
  })
  const taken = slots.locator('li', { hasText: 'Thistle & Welt' }).first()
  await expect(taken).toContainText('Agreed')
  await expect(taken).toContainText('Trim bay')
  await stays()

  await rival.getByRole('button', { name: /^Claim / }).click()
  await expect(rival.getByText(/^Refused.*Nothing was changed\.$/)).toBeVisible()
  const why = rival.locator('.conds')
  await expect(why).toContainText('Shell')
  await expect(why).toContainText('Thistle & Welt')
  await expect(slots.locator('li', { hasText: 'Quill Electrical' })).toHaveCount(0)
})
