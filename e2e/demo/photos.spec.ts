import { expect, type Page } from '@playwright/test'
import { parse } from 'exifr/dist/full.esm.mjs'
import { aPhoto, liesSo } from './a-photo.ts'
import { carPath, find } from './find.ts'
import { type As, test } from './loaded.ts'

const CHECK = 'top on its hoops, no seam proud'
const place = { latitude: 54.56831, longitude: -3.01472 }
const takenAt = '2026:11:20 14:05:33'

/** The trimmer's phone at a photo check of a stage in work. */
async function atTheCheck(as: As): Promise<Page> {
  const page = await as('Sorrel Penn')
  const car = await carPath(page, 'Dunmore')
  const named = 'Seats, linings and top made'
  const { id } = await find(page, 'stage', ({ name }) => name === named, car)
  await page.goto(`${car}/stages/${id}`)
  await expect(field(page)).toBeVisible()
  return page
}
const field = (page: Page) => row(page).getByRole('group', { name: 'Photos' })
const row = (page: Page) => page.getByRole('listitem').filter({ hasText: new RegExp(CHECK, 'i') })

const choose = (page: Page, ...photos: readonly { name: string; buffer: Buffer }[]) =>
  field(page)
    .getByLabel('Choose photos')
    .setInputFiles(photos.map((photo) => ({ mimeType: 'image/jpeg', ...photo })))

/** Where the photos of the field are, once the server has them. */
async function arrived(page: Page, count: number): Promise<readonly string[]> {
  await expect(field(page).getByText('Arrived')).toHaveCount(count, { timeout: 30_000 })
  const links = await field(page).locator('li a').all()
  return Promise.all(links.map(async (link) => (await link.getAttribute('href')) ?? ''))
}
const bytesAt = async (page: Page, address: string) => (await page.request.get(address)).body()

const upright = { corners: ['red', 'green', 'blue', 'yellow'] }

test('a photo taken on its side arrives upright, smaller and without its place, and is evidence', async ({
  as,
}) => {
  const page = await atTheCheck(as)
  const photo = await aPhoto(page, { orientation: 6, place, takenAt })
  expect((await parse(photo)).latitude).toBeCloseTo(place.latitude, 4)
  await choose(page, { name: 'top.jpg', buffer: photo })
  const [address = ''] = await arrived(page, 1)
  const kept = await liesSo(page, address)
  expect(kept).toMatchObject({ ...upright, width: 1920, height: 2560 })
  expect(kept.bytes).toBeLessThan(photo.length)
  const said = await parse(await bytesAt(page, address), { reviveValues: false })
  expect(Object.keys(said).sort()).toEqual(['DateTimeOriginal', 'ExifVersion'])
  expect(said.DateTimeOriginal).toBe(takenAt)
  await row(page).getByRole('button', { name: 'Enter', exact: true }).click()
  await expect(row(page).getByText('1 photo', { exact: true })).toBeVisible()
  const shown = row(page).getByRole('img', { name: new RegExp(CHECK) })
  await expect
    .poll(() => shown.evaluate((img) => img instanceof HTMLImageElement && img.naturalWidth))
    .toBe(1920)
  await shown.click()
  const viewer = page.getByRole('dialog', { name: new RegExp(CHECK) })
  await expect(viewer.getByRole('img')).toBeVisible()
  await page.keyboard.press('Escape')
  await expect(viewer).toHaveCount(0)
  await expect(row(page).getByRole('link', { name: new RegExp(CHECK) })).toBeFocused()
})

test('a photo chosen on a phone without a network is made ready beside the page, and sent when there is one', async ({
  as,
}) => {
  const page = await as('Mara Ellwood')
  const car = await carPath(page)
  const photo = await aPhoto(page, { orientation: 6, place })
  await page.goto(car)
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready
  })
  // What is seen is kept some moments later.
  await expect.poll(() => viewsKept(page), { timeout: 20_000 }).toBeGreaterThan(0)
  const broken: Error[] = []
  page.on('pageerror', (error) => broken.push(error))
  await page.context().setOffline(true)
  await page.goto(`${car}/change-orders/new`)
  const photos = page.getByRole('group', { name: 'Photos' })
  await photos.getByLabel('Choose photos').setInputFiles({
    name: 'mount.jpg',
    mimeType: 'image/jpeg',
    buffer: photo,
  })
  await expect(photos.getByText(/1 photo kept on this phone/)).toBeVisible({ timeout: 30_000 })
  expect(page.workers()).toHaveLength(1)
  expect(broken).toEqual([])
  await page.context().setOffline(false)
  await expect(photos.getByText('Arrived')).toBeVisible({ timeout: 30_000 })
  const address = (await photos.getByRole('link').first().getAttribute('href')) ?? ''
  expect(await liesSo(page, address)).toMatchObject(upright)
})

test('with the tick a photo keeps where it was taken', async ({ as }) => {
  const page = await atTheCheck(as)
  await field(page).getByLabel('Keep in each photo where it was taken').check()
  await choose(page, {
    name: 'top.jpg',
    buffer: await aPhoto(page, { orientation: 8, place, takenAt }),
  })
  const [address = ''] = await arrived(page, 1)
  const said = await parse(await bytesAt(page, address))
  expect(said.latitude).toBeCloseTo(place.latitude, 4)
  expect(said.longitude).toBeCloseTo(place.longitude, 4)
  expect(await liesSo(page, address)).toMatchObject(upright)
})

test('eight photos, each turned another way, all arrive upright', async ({ as }) => {
  const page = await atTheCheck(as)
  const photos: { name: string; buffer: Buffer }[] = []
  for (let orientation = 1; orientation <= 8; orientation++) {
    const buffer = await aPhoto(page, { orientation, width: 900, height: 1200 })
    photos.push({ name: `${orientation}.jpg`, buffer })
  }
  await choose(page, ...photos)
  const addresses = await arrived(page, 8)
  for (const [n, address] of addresses.entries()) {
    expect(await liesSo(page, address), `orientation ${n + 1}`).toMatchObject({
      ...upright,
      width: 900,
      height: 1200,
    })
  }
})

/** How many records this phone keeps to be read without a network. */
const viewsKept = (page: Page) =>
  page.evaluate(
    () =>
      new Promise<number>((done) => {
        const open = indexedDB.open('fettleyard')
        open.onsuccess = () => {
          const count = open.result.transaction('views').objectStore('views').count()
          count.onsuccess = () => {
            open.result.close()
            done(count.result)
          }
        }
      }),
  )

/** A poor line: each piece of an upload takes its time. Gives back what cuts it, pieces on their way too, and mends it. */
async function slowly(page: Page): Promise<{ cut: () => void; mend: () => void }> {
  let isCut = false
  await page.context().route('**/uploads/*', async (route) => {
    await new Promise((resolve) => setTimeout(resolve, isCut ? 0 : 2_000))
    // The page may be gone meanwhile.
    await (isCut ? route.abort('internetdisconnected') : route.continue()).catch(() => undefined)
  })
  return {
    cut: () => {
      isCut = true
    },
    mend: () => {
      isCut = false
    },
  }
}

/** Counts the uploads that begin. */
function begun(page: Page): () => number {
  let count = 0
  page.on('request', (request) => {
    if (request.method() === 'POST' && request.url().endsWith('/uploads')) count += 1
  })
  return () => count
}

test('a network that goes in mid-upload: the photo is kept here, goes on where it stopped, and arrives once', async ({
  as,
}) => {
  const page = await atTheCheck(as)
  const uploads = begun(page)
  const photo = await aPhoto(page, { place })
  await slowly(page)
  await choose(page, { name: 'top.jpg', buffer: photo })
  await expect(field(page).getByText(/Sending, [1-9]\d? %/)).toBeVisible({ timeout: 20_000 })
  await page.context().setOffline(true)
  await expect(
    field(page).getByText('1 photo kept on this phone, sent when there is a signal.'),
  ).toBeVisible({ timeout: 20_000 })
  await expect(field(page).getByText(/Kept on this phone, [1-9]\d? % sent/)).toBeVisible()
  await page.context().setOffline(false)
  const [address = ''] = await arrived(page, 1)
  expect(await liesSo(page, address)).toMatchObject(upright)
  expect(uploads()).toBe(1)
})

test('a page that is closed in mid-upload has its photo again when it is opened, and sends the rest', async ({
  as,
}) => {
  const page = await atTheCheck(as)
  const photo = await aPhoto(page, { place })
  const line = await slowly(page)
  await choose(page, { name: 'top.jpg', buffer: photo })
  await expect(field(page).getByText(/Sending, [1-9]\d? %/)).toBeVisible({ timeout: 20_000 })
  line.cut()
  await page.waitForEvent('requestfailed')
  const again = await page.context().newPage()
  await page.close()
  line.mend()
  const uploads = begun(again)
  await again.goto(page.url())
  const [address = ''] = await arrived(again, 1)
  expect(await liesSo(again, address)).toMatchObject(upright)
  expect(uploads()).toBe(0)
  await expect(row(again).getByRole('button', { name: 'Enter', exact: true })).toBeVisible()
})

test('what is no picture is refused in words; what is left out can be put back', async ({ as }) => {
  const page = await atTheCheck(as)
  const heic = Buffer.concat([
    Buffer.from([0, 0, 0, 24]),
    Buffer.from('ftypheic'),
    Buffer.alloc(99),
  ])
  await choose(
    page,
    { name: 'IMG_1.HEIC', buffer: heic },
    { name: 'list.txt', buffer: Buffer.from('3 hides') },
    { name: 'broken.jpg', buffer: Buffer.from([0xff, 0xd8, 0xff, 0xe0, 0, 4, 1, 1]) },
    { name: 'good.jpg', buffer: await aPhoto(page, { width: 600, height: 800 }) },
  )
  await expect(field(page).getByText(/IMG_1.HEIC is a HEIC picture.*save JPEG/)).toBeVisible()
  await expect(field(page).getByText(/list.txt is no picture and no PDF/)).toBeVisible()
  await expect(field(page).getByText(/broken.jpg can’t be read as a picture/)).toBeVisible()
  await arrived(page, 1)
  await field(page).getByRole('button', { name: 'Leave 1 out' }).click()
  await expect(field(page).getByText('Arrived')).toHaveCount(0)
  await field(page).getByRole('button', { name: 'Put it back' }).click()
  await arrived(page, 1)
})
