import { expect } from '@playwright/test'
import { pathTo } from './find.ts'
import { test } from './loaded.ts'

const FITTING = 'Engine and gearbox into the bay'

test('a stage is split while the work is under way: what it would do is shown first, and done as shown', async ({
  as,
}) => {
  const desk = await as('Mara Ellwood')
  const stage = await pathTo(desk, 'stage', FITTING)
  await desk.goto(stage.replace('/stages/', '/set-up/stages/'))
  await desk.getByText('Split it in two').click()
  await desk.getByLabel('The second').fill('Gearbox coupled, mounts torqued')
  await expect(desk.getByText('What it would do', { exact: true })).toBeVisible()
  await expect(desk.getByText(/The end (stays|goes)/)).toBeVisible()
  await desk.getByRole('button', { name: /^Split 62/ }).click()
  await expect(desk.getByText('It is two stages now.')).toBeVisible()
  await expect(
    desk.getByRole('link', { name: /Gearbox coupled, mounts torqued/ }).first(),
  ).toBeVisible()
})

test('a step is ticked at the bench, and the card on paper has the steps, the limits and the way back', async ({
  as,
}) => {
  const phone = await as('Wyn Pardoe')
  const stage = await pathTo(phone, 'stage', 'Engine ready to fit')
  await phone.goto(stage)
  await phone.getByText(/^Procedure: 0 of 6/).click()
  await phone.getByRole('checkbox', { name: /Prime until the gauge moves/ }).click()
  await expect(phone.getByText(/^Procedure: 1 of 6/)).toBeVisible()
  await expect(phone.getByText(/Done by Wyn Pardoe/)).toBeVisible()
  await phone.getByRole('link', { name: 'Job card to print' }).click()
  await expect(phone.getByRole('heading', { name: /Engine ready to fit/ }).last()).toBeVisible()
  await expect(phone.getByText('limits 3.1 to 4.5 bar')).toBeVisible()
  await expect(phone.getByRole('img', { name: /The squares lead to stage/ })).toBeVisible()
})
