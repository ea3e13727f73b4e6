import { expect } from '@playwright/test'
import { carPath, find } from './find.ts'
import { test } from './loaded.ts'

test('the epoxy waits for its precautions and for air and surface: both are cleared at the panel, and the margin is said', async ({
  as,
}) => {
  const phone = await as('Sil Harker')
  const car = await carPath(phone, 'Dunmore')
  const { id } = await find(
    phone,
    'stage',
    ({ hazards }) => Array.isArray(hazards) && hazards.includes('isocyanate'),
    car,
  )
  await phone.goto(`${car}/stages/${id}`)
  await expect(
    phone.getByRole('heading', { name: 'Its precautions are not ticked' }).first(),
  ).toBeVisible()
  await expect(
    phone.getByRole('heading', { name: 'Air and surface have not been read' }).first(),
  ).toBeVisible()
  await phone.getByLabel('Air, °C').fill('18')
  await phone.getByLabel('Surface of the panel, °C').fill('15,4')
  await phone.getByLabel('Relative humidity, %').fill('70')
  await expect(phone.getByText(/too little/)).toBeVisible()
  await phone.getByRole('button', { name: 'Enter air and surface' }).click()
  await expect(
    phone.getByRole('heading', { name: 'The surface is too near the dew point' }).first(),
  ).toBeVisible()
  await phone.getByLabel('Air, °C').fill('18')
  await phone.getByLabel('Surface of the panel, °C').fill('18')
  await phone.getByLabel('Relative humidity, %').fill('62')
  await phone.getByRole('button', { name: 'Enter air and surface' }).click()
  await expect(phone.getByText('Air and surface are read, and fit to spray')).toHaveCount(1)
  await phone.getByRole('button', { name: 'The precautions are in place' }).first().click()
  await expect(phone.getByRole('heading', { name: 'Its precautions are not ticked' })).toHaveCount(
    0,
  )
})

test('what is in date stands with each party, and what is not is seen at once', async ({ as }) => {
  const desk = await as('Mara Ellwood')
  await desk.goto(`${await carPath(desk, 'Dunmore')}/people`)
  await expect(desk.getByText('In date: 2 of 3')).toBeVisible()
  await expect(desk.getByText(/lifting examination · out of date since/)).toBeVisible()
})
