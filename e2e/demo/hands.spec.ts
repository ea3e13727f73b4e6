import { expect, type Locator } from '@playwright/test'
import { CROSS } from '../../lib/custody/signature.ts'
import { hold } from '../held.ts'
import { carPath, find, pathTo, sendPast } from './find.ts'
import { test } from './loaded.ts'
import { read, readTheRest } from './read.ts'

const STAGE = 'Engine ready to fit'

test('the phone is felt when a reading lies out of limits and when a held press counts, unless its keeper wants it still', async ({
  as,
}) => {
  const page = await as('Jory Wenlock')
  await page.addInitScript(() => {
    const felt: unknown[] = []
    const own = navigator.vibrate.bind(navigator)
    Object.assign(window, { felt })
    navigator.vibrate = (pattern: Iterable<number> | VibratePattern) => {
      const now = typeof pattern === 'number' ? [pattern] : [...pattern]
      felt.push(now)
      return own(now)
    }
  })
  const felt = () => page.evaluate(() => Object.getOwnPropertyDescriptor(window, 'felt')?.value)
  const stage = await pathTo(page, 'stage', STAGE)
  await page.goto(stage)
  await read(page, 'oil pressure hot, 3,000 rev/min', '2.7')
  await expect(page.getByText('2.7 bar · out of limits')).toBeVisible()
  expect(await felt()).toEqual([[90, 70, 90]])

  await page.goto('/account')
  await page.getByLabel('This phone buzzes').uncheck()
  await page.goto(stage)
  await read(page, 'oil pressure hot, 3,000 rev/min', '2.8')
  await expect(page.getByText('2.8 bar · out of limits')).toBeVisible()
  expect(await felt()).toEqual([])

  await page.goto('/account')
  await page.getByLabel('This phone buzzes').check()
  await page.goto(stage)
  await readTheRest(page)
  await hold(page.getByRole('button', { name: /^Ready to fit: \d+/ }))
  await expect(page.getByText('Signed off').first()).toBeVisible()
  expect(await felt()).toEqual([[60]])
})

test('the screen stays on during a bench procedure when its keeper says so, and this phone remembers it', async ({
  as,
}) => {
  const page = await as('Jory Wenlock')
  await page.goto(await pathTo(page, 'stage', STAGE))
  const keep = page.getByLabel(/^Keep the screen on/)
  await keep.check()
  await expect(page.getByText('It stays on while this stage is in sight.')).toBeVisible()
  await page.reload()
  await expect(keep).toBeChecked()
  await expect(page.getByText('It stays on while this stage is in sight.')).toBeVisible()
  await keep.uncheck()
  await expect(page.getByText('Otherwise it goes dark', { exact: false })).toBeVisible()
  // Where there is nothing to read off, the phone does as it likes.
  await page.goto(await pathTo(page, 'stage', 'Gearbox rebuilt'))
  await expect(page.getByText('Signed off').first()).toBeVisible()
  await expect(keep).toHaveCount(0)
})

/** Draws over the field with one finger, by touches as a phone sends them; another finger rests beside it. */
async function draw(field: Locator, points: readonly (readonly [number, number])[]): Promise<void> {
  await field.scrollIntoViewIfNeeded()
  const box = await field.boundingBox()
  if (box === null) throw new Error('The field is not in sight.')
  const session = await field.page().context().newCDPSession(field.page())
  const at = ([x, y]: readonly [number, number]) => ({
    x: box.x + x * box.width,
    y: box.y + y * box.height,
    id: 0,
  })
  const [first, ...rest] = points
  if (first === undefined) return
  await session.send('Input.dispatchTouchEvent', { type: 'touchStart', touchPoints: [at(first)] })
  for (const point of rest)
    await session.send('Input.dispatchTouchEvent', { type: 'touchMove', touchPoints: [at(point)] })
  await session.send('Input.dispatchTouchEvent', { type: 'touchEnd', touchPoints: [] })
  await session.detach()
}

test('a driver signs with a finger, undoes a stroke, or signs with a cross by the keys alone', async ({
  as,
  browser,
  yard,
}) => {
  const lead = await as('Mara Ellwood')
  const car = await carPath(lead)
  const alone = await find(
    lead,
    'assembly',
    ({ name, host, custodian }) => name === 'Bonnet' && host === null && custodian !== null,
  )
  const plating = await find(lead, 'party', ({ name }) => name === 'Northgate Plating')
  const made = await sendPast(lead, 'handover.prepare', {
    assemblies: [alone.id],
    to: plating.id,
    condition: 'Sound, complete.',
    care: '',
  })
  expect(made.status, made.body).toBe(200)
  const handover = await find(
    lead,
    'handover',
    ({ state, assemblies }) =>
      state === 'prepared' && Array.isArray(assemblies) && assemblies.includes(alone.id),
  )
  const released = await sendPast(lead, 'handover.release', {
    handover: handover.id,
    condition: 'Sound, complete.',
    care: '',
    pieces: 1,
    files: [],
  })
  expect(released.status, released.body).toBe(200)
  await lead.goto(`${car}/handovers/${handover.id}`)
  await lead.getByRole('button', { name: 'Make a link and a QR code' }).click()
  const link = await lead.locator('.link-text').textContent()

  const context = await browser.newContext({ baseURL: yard.url })
  const driver = await context.newPage()
  await driver.goto(link ?? '')
  const field = driver.getByRole('img', { name: /^Empty: sign here/ })
  await expect(field).toBeVisible()
  const signature = driver.locator('svg.signature path').last()
  const scrolled = () => driver.evaluate(() => window.scrollY)
  await field.scrollIntoViewIfNeeded()
  const before = await scrolled()
  const drawn = driver.locator('svg.signature').first()
  await draw(drawn, [
    [0.1, 0.2],
    [0.4, 0.8],
    [0.6, 0.3],
  ])
  await draw(drawn, [
    [0.7, 0.9],
    [0.9, 0.1],
  ])
  // The finger draws; the page stays where it is.
  expect(await scrolled()).toBe(before)
  expect((await signature.getAttribute('d'))?.split('M')).toHaveLength(3)
  await driver.getByRole('button', { name: 'Undo the last stroke' }).click()
  // One stroke is left, where the finger was, whichever way the phone is held.
  await expect(signature).toHaveAttribute('d', /^M60 60[^M]*L360 90$/)
  await driver.getByRole('button', { name: 'Wipe it' }).click()
  await expect(field).toBeVisible()

  await driver.getByRole('button', { name: 'Sign with a cross' }).focus()
  await driver.keyboard.press('Enter')
  await expect(driver.getByText('Signed with a cross')).toHaveCount(1)
  await driver.getByLabel('Your name').fill('Tobin Ashe')
  await driver.getByLabel('How many pieces do you count?').fill('1')
  await driver.getByText('Accepted', { exact: true }).click()
  await driver.getByRole('button', { name: /^Receive / }).click()
  const kept = lead.getByRole('img', { name: 'Signature of the receiver' }).locator('path')
  await expect(kept).toHaveAttribute('d', CROSS)
  await context.close()
})
