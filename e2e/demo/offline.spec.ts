import { expect, type Locator, type Page } from '@playwright/test'
import * as z from 'zod/mini'
import { aServer } from '../../test/a-server.ts'
import { aPhoto } from './a-photo.ts'
import { carPath, find, sendPast } from './find.ts'
import { keptRecords } from './kept-records.ts'
import { enter, test } from './loaded.ts'

const CAR = 'Dunmore'
const STAGE = 'Springs and axles stripped, gauged'
const READING = 'camber of each spring'
const PHOTOS = 'leaves and eyes'

/** The stage that a hand of the lead works on, as whoever looks at that page has it. */
async function stagePath(page: Page): Promise<string> {
  const car = await carPath(page, CAR)
  const { id } = await find(page, 'stage', ({ name }) => name === STAGE, car)
  return `${car}/stages/${id}`
}
async function checkId(page: Page, named: string): Promise<string> {
  const car = await carPath(page, CAR)
  return (await find(page, 'check', ({ name }) => name === named, car)).id
}

/** The phone at the stage, all of it loaded. */
async function atTheStage(page: Page): Promise<string> {
  const path = await stagePath(page)
  await page.goto(path)
  await isLive(page)
  return path
}
const isLive = (page: Page) => expect(page.getByText('Live', { exact: true })).toBeVisible()
const check = (page: Page, name: string): Locator =>
  page.locator('li.check', { has: page.getByRole('heading', { name }) })
const unsent = (page: Page, count: number) =>
  expect(
    page.getByRole('link', {
      name: new RegExp(`^${count} unsent, the oldest since \\d\\d:\\d\\d`),
    }),
  ).toBeVisible()
const allSent = (page: Page) =>
  expect(page.getByRole('link', { name: /unsent, the oldest/ })).toHaveCount(0)

async function writeNote(page: Page, text: string): Promise<void> {
  await page.getByLabel('A note').fill(text)
  await page.getByRole('button', { name: 'Write the note' }).click()
  await expect(page.getByLabel('A note')).toHaveValue('')
}
async function enterReading(page: Page, value: string): Promise<void> {
  await check(page, READING)
    .getByLabel(/^Reading/)
    .fill(value)
  await check(page, READING).getByRole('button', { name: 'Enter', exact: true }).click()
}
async function choosePhotos(page: Page): Promise<void> {
  const files = await Promise.all(
    [1, 2].map(async (orientation) => ({
      name: `leaf-${orientation}.jpg`,
      mimeType: 'image/jpeg',
      buffer: await aPhoto(page, { orientation, width: 600, height: 800 }),
    })),
  )
  await check(page, PHOTOS).getByLabel('Choose photos').setInputFiles(files)
  await expect(check(page, PHOTOS).locator('fieldset li')).toHaveCount(2)
}

async function wantPart(page: Page, what: string, stage: string): Promise<void> {
  await page.getByLabel('What', { exact: true }).fill(what)
  await page.getByText(/^Stages that wait for it/).click()
  await page.getByRole('checkbox', { name: new RegExp(stage) }).check()
  await page.getByRole('button', { name: /^Put on the list/ }).click()
}

const Journal = z.object({
  entries: z.array(
    z.object({
      sequence: z.number(),
      command: z.string(),
      person: z.string(),
      entities: z.array(
        z.looseObject({
          kind: z.string(),
          text: z.optional(z.nullable(z.string())),
          value: z.optional(z.nullable(z.number())),
          files: z.optional(z.array(z.string())),
        }),
      ),
    }),
  ),
})

async function entries(page: Page) {
  const car = await carPath(page, CAR)
  const answer = await page.request.get(`/api${car.replace('/p/', '/projects/')}/journal?limit=30`)
  return Journal.parse(await answer.json()).entries
}
const lastEntry = async (page: Page): Promise<number> => (await entries(page))[0]?.sequence ?? 0

/** What one person did since that entry, oldest first, each by what it left. */
async function journal(page: Page, person: string, since: number): Promise<readonly string[]> {
  return (await entries(page))
    .filter((entry) => entry.person === person && entry.sequence > since)
    .map(({ command, entities }) => {
      const about = entities.find(
        ({ kind }) => kind === (command === 'note.write' ? 'note' : 'check'),
      )
      const files = about?.files?.length ?? 0
      return [command, about?.text ?? about?.value ?? '', files === 0 ? '' : `${files} files`]
        .filter((part) => part !== '')
        .join(' ')
    })
    .reverse()
}
const Me = z.object({ person: z.object({ id: z.string() }) })
const personOf = async (page: Page): Promise<string> =>
  Me.parse(await (await page.request.get('/api/me')).json()).person.id

test('airplane mode in mid-work: five presses and two photos, the page killed; all there once, in order, one refused with its input kept', async ({
  as,
}) => {
  const hand = await as('Sil Harker')
  const lead = await as('Mara Ellwood')
  const person = await personOf(hand)
  const path = await atTheStage(hand)
  await hand.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated')
  await expect.poll(() => keptRecords(hand)).toBeGreaterThan(0)
  const before = await lastEntry(lead)

  await hand.context().setOffline(true)
  await writeNote(hand, 'Leaf two is cracked at the eye.')
  await unsent(hand, 1)
  await enterReading(hand, '38')
  await unsent(hand, 2)
  await choosePhotos(hand)
  await check(hand, PHOTOS).getByRole('button', { name: 'Enter', exact: true }).click()
  await unsent(hand, 3)
  await hand.getByRole('button', { name: /^Pause \d+/ }).click()
  // As the rules here make it, and marked as what only this phone knows.
  await expect(hand.getByText('Paused').first()).toBeVisible()
  await expect(hand.getByText('Not sent yet').first()).toBeVisible()
  await writeNote(hand, 'Waiting for the new leaf.')
  await unsent(hand, 5)

  // Meanwhile, on a phone with signal, somebody else of the same shop reads the same check.
  await lead.goto(path)
  const camber = await checkId(lead, READING)
  expect((await sendPast(lead, 'check.record', { check: camber, value: 36 })).status).toBe(200)

  // The page is killed, and opened again from what the phone keeps: with all that was pressed.
  const phone = hand.context()
  await hand.close()
  const again = await phone.newPage()
  await again.goto(path)
  await unsent(again, 5)
  await expect(again.getByText('Paused').first()).toBeVisible()
  await expect(again.getByText('Waiting for the new leaf.')).toBeVisible()
  await again.goto('/unsent')
  await expect(again.getByRole('heading', { name: 'Goes when there is signal' })).toBeVisible()
  await expect(again.getByText('Kept on this phone')).toHaveCount(5)
  // A photo that only this phone has opens over the whole screen, as large as it goes out.
  await again
    .getByRole('link')
    .filter({ has: again.getByRole('img') })
    .first()
    .click()
  const whole = again.getByRole('dialog').getByRole('img')
  await expect
    .poll(() => whole.evaluate((img) => img instanceof HTMLImageElement && img.naturalWidth))
    .toBe(600)
  await again.keyboard.press('Escape')
  await again.goto(path)
  await unsent(again, 5)

  await phone.setOffline(false)
  await expect(again.getByRole('link', { name: '1 refused on arrival' })).toBeVisible()
  await expect
    .poll(async () => journal(lead, person, before))
    .toEqual([
      'note.write Leaf two is cracked at the eye.',
      'check.record 2 files',
      'stage.pause',
      'note.write Waiting for the new leaf.',
    ])
  const refused = check(again, READING)
  await expect(refused.getByLabel(/^Reading/)).toHaveValue('38')
  await expect(refused.getByText('Nothing was changed.')).toBeVisible()

  await again.getByRole('link', { name: '1 refused on arrival' }).click()
  await expect(again.getByRole('heading', { name: 'Refused on arrival' })).toBeVisible()
  await expect(again.getByText(/Enter · camber of each spring/)).toBeVisible()
  await again.getByRole('button', { name: 'Drop it' }).click()
  await expect(again.getByText('Everything is sent')).toBeVisible()
  await again.getByRole('button', { name: 'Put it back' }).click()
  await again.getByRole('link', { name: 'Show where it was pressed' }).click()
  await check(again, READING).getByRole('button', { name: 'Send it again' }).click()
  await expect(check(again, READING).locator('.val')).toContainText('38 mm')
  await expect(again.getByRole('link', { name: '1 refused on arrival' })).toHaveCount(0)
  expect((await journal(lead, person, before)).at(-1)).toBe('check.record 38')
})

test('what was refused as it arrived is in its form again, and takes its own place when it is put right', async ({
  as,
}) => {
  const hand = await as('Sil Harker')
  const lead = await as('Mara Ellwood')
  const car = await carPath(lead, CAR)
  const party = (await find(lead, 'stage', ({ name }) => name === STAGE, car)).party
  const doomed = 'Rear seats out'
  expect((await sendPast(lead, 'stage.add', { name: doomed, party })).status).toBe(200)
  const stage = await find(lead, 'stage', ({ name }) => name === doomed, car)
  await hand.goto(`${car}/parts/new`)
  await isLive(hand)
  await hand.context().setOffline(true)
  await wantPart(hand, 'Seat runner', doomed)
  await unsent(hand, 1)
  const removed = await sendPast(lead, 'stage.remove', { stage: stage.id, reason: 'Not wanted.' })
  expect(removed.status).toBe(200)
  await hand.context().setOffline(false)
  await expect(hand.getByRole('link', { name: '1 refused on arrival' })).toBeVisible()

  await hand.goto(`${car}/parts/new`)
  await expect(hand.getByLabel('What', { exact: true })).toHaveValue('Seat runner')
  await hand.getByLabel('What', { exact: true }).fill('Seat runner, left')
  await hand.getByRole('button', { name: /^Put on the list/ }).click()
  await expect(hand.getByRole('heading', { name: 'Seat runner, left' })).toBeVisible()
  await expect(hand.getByRole('link', { name: '1 refused on arrival' })).toHaveCount(0)
})

test('two tabs send once what both of them pressed', async ({ as }) => {
  const one = await as('Sil Harker')
  const person = await personOf(one)
  const path = await atTheStage(one)
  const before = await lastEntry(one)
  const other = await one.context().newPage()
  await other.goto(path)
  await isLive(other)
  await one.context().setOffline(true)
  await writeNote(one, 'From the first tab.')
  await writeNote(other, 'From the second tab.')
  await unsent(one, 2)
  await unsent(other, 2)
  await one.context().setOffline(false)
  await allSent(one)
  await allSent(other)
  await expect
    .poll(async () => journal(one, person, before))
    .toEqual(['note.write From the first tab.', 'note.write From the second tab.'])
  for (const page of [one, other]) {
    await expect(page.getByText('From the first tab.')).toHaveCount(1)
    await expect(page.getByText('Not sent yet')).toHaveCount(0)
  }
})

test('a lost session holds it back: never under another name, and on as soon as the same person is in again', async ({
  as,
}) => {
  const hand = await as('Sil Harker')
  const desk = await as('Sil Harker')
  const person = await personOf(hand)
  const path = await atTheStage(hand)
  const lead = await as('Mara Ellwood')
  const before = await lastEntry(lead)
  await hand.context().setOffline(true)
  await writeNote(hand, 'Only I may say this.')
  await unsent(hand, 1)
  await desk.goto('/account')
  await desk.getByRole('button', { name: 'Sign out everywhere' }).click()
  await expect(desk).toHaveURL(/\/sign-in/)

  await hand.context().setOffline(false)
  await expect(hand).toHaveURL(/\/sign-in/)
  await expect(
    hand.getByText('Sign in again as Sil Harker: 1 press waits on this phone.'),
  ).toBeVisible()

  await enter(hand, 'Mara Ellwood', path)
  await isLive(hand)
  await expect(hand.getByText('Only I may say this.')).toHaveCount(0)
  await hand.goto('/unsent')
  await expect(hand.getByText('1 press of Sil Harker')).toBeVisible()
  await expect(hand.getByText('Only I may say this.')).toHaveCount(0)
  expect(await journal(lead, person, before)).toEqual([])

  await enter(hand, 'Sil Harker', path)
  await isLive(hand)
  await expect(hand.getByText('Only I may say this.')).toBeVisible()
  await allSent(hand)
  expect(await journal(lead, person, before)).toEqual(['note.write Only I may say this.'])
})

test('a server that stops keeps nothing back: it goes as soon as it serves again', async ({
  as,
  yard,
}) => {
  const hand = await as('Sil Harker')
  const person = await personOf(hand)
  await atTheStage(hand)
  const before = await lastEntry(hand)
  const { port } = new URL(yard.url)
  await yard.stop()
  await writeNote(hand, 'While nobody answers.')
  await unsent(hand, 1)
  const started = await aServer({ PORT: port, FETTLEYARD_DATA: yard.dataDir })
  try {
    await allSent(hand)
    expect(await journal(hand, person, before)).toEqual(['note.write While nobody answers.'])
  } finally {
    await started.stop()
  }
})

test('whoever signs out is told first what stays on the phone', async ({ as }) => {
  const hand = await as('Sil Harker')
  await atTheStage(hand)
  const account = await hand.context().newPage()
  await account.goto('/account')
  await hand.context().setOffline(true)
  await writeNote(hand, 'One for later.')
  await unsent(hand, 1)
  await account.getByRole('button', { name: 'Sign out on this device' }).click()
  await expect(
    account.getByText(/A press has not been sent\. It stays on this phone/),
  ).toBeVisible()
  await account.getByRole('button', { name: 'Stay signed in' }).click()
  await expect(account.getByRole('button', { name: 'Sign out on this device' })).toBeVisible()
})
