import { expect } from '@playwright/test'
import { find, pathTo, sendPast } from './find.ts'
import { test } from './loaded.ts'
import { sameDocument } from './same-document.ts'

const READY = 'Engine ready to fit'

test('a phone without a network says so, and shows all that it missed once it is back', async ({
  as,
}) => {
  const lead = await as('Mara Ellwood')
  const engineShop = await as('Wyn Pardoe')
  const path = await pathTo(engineShop, 'stage', READY)
  const hot = await find(
    engineShop,
    'check',
    ({ name }) => name === 'oil pressure hot, 3,000 rev/min',
  )
  const spread = await find(engineShop, 'check', ({ name }) => name === 'compression spread, warm')
  const { id: stage } = await find(
    engineShop,
    'stage',
    ({ name }) => name?.startsWith(READY) ?? false,
  )
  await lead.goto(path)
  await expect(lead.getByText('Live', { exact: true })).toBeVisible()
  const stays = await sameDocument(lead)

  await lead.context().setOffline(true)
  await expect(lead.getByText(/^As of \d\d:\d\d.*no network$/)).toBeVisible()
  for (const [name, input] of [
    ['check.record', { check: hot.id, value: 3.8 }],
    ['check.record', { check: spread.id, value: 4.5 }],
    ['stage.pause', { stage }],
    ['note.write', { on: stage, sharing: 'shared', text: 'Second hot run tomorrow morning.' }],
  ] as const) {
    const { status, body } = await sendPast(engineShop, name, input)
    expect(status, `${name}: ${body}`).toBe(200)
  }
  await expect(lead.getByText('3.8 bar')).toHaveCount(0)
  await expect(lead.getByText('Paused')).toHaveCount(0)

  await lead.context().setOffline(false)
  await expect(lead.getByText('Live', { exact: true })).toBeVisible()
  await expect(lead.getByText('3.8 bar')).toBeVisible()
  await expect(lead.getByText('4.5 %')).toBeVisible()
  await expect(lead.getByText('Paused').first()).toBeVisible()
  await expect(lead.getByText('Second hot run tomorrow morning.')).toBeVisible()
  await stays()
})

test('a second tab and a second device agree with the first, press for press', async ({ as }) => {
  const phone = await as('Wyn Pardoe')
  const path = await pathTo(phone, 'stage', READY)
  await phone.goto(path)
  const tab = await phone.context().newPage()
  await tab.goto(path)
  const desk = await as('Wyn Pardoe', path)
  const all = [phone, tab, desk]
  for (const page of all) await expect(page.getByText('Live', { exact: true })).toBeVisible()

  await phone.getByRole('button', { name: /^Pause \d+/ }).click()
  for (const page of all) await expect(page.getByText('Paused').first()).toBeVisible()
  await tab.getByRole('button', { name: /^Resume \d+/ }).click()
  for (const page of all) await expect(page.getByText('In work').first()).toBeVisible()
  // Two devices press the same at once: it is done once, and a live change never makes the slower thumb press what replaced it.
  const pauses = [phone, desk].map(async (page) => {
    const button = page.getByRole('button', { name: /^Pause \d+/ })
    await button.click({ timeout: 2_000 }).catch(() => expect(button).toHaveCount(0))
  })
  await Promise.all(pauses)
  for (const page of all) await expect(page.getByText('Paused').first()).toBeVisible()
})
