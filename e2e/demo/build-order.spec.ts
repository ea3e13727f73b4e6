import { expect, type Locator, type Page } from '@playwright/test'
import { carPath } from './find.ts'
import { test } from './loaded.ts'

const DESK = { width: 1280, height: 900 }

/** How far along its days a wall is scrolled. */
const along = (wall: Locator): Promise<number> => wall.evaluate((region) => region.scrollLeft)
const wallOf = (page: Page): Locator =>
  page.getByRole('group', { name: 'Build order along the days' })
const focused = (page: Page): Locator => page.locator('.tile:focus')

test('the lead walks the drawn build order with the keys alone, and opens a stage from it', async ({
  as,
}) => {
  const page = await as('Mara Ellwood')
  await page.setViewportSize(DESK)
  await page.goto(`${await carPath(page)}/build-order`)
  const wall = wallOf(page)
  await expect(wall).toHaveAccessibleDescription(
    /^\d+ stages along the days in the lanes of \d+ shops, .* without odds, .* critical run is /,
  )
  for (const shop of ['Tarn Lane Coachworks', 'Bexwater Engines', 'Thistle & Welt']) {
    await expect(wall.getByRole('group', { name: shop, exact: true })).toHaveCount(1)
  }

  // One card is in the tab order; the keys lead to the others.
  await expect(wall.locator('.tile[tabindex="0"]')).toHaveCount(1)
  await page.getByRole('button', { name: 'To today' }).focus()
  await page.keyboard.press('Tab')
  await expect(focused(page)).toHaveCount(1)
  await page.keyboard.press('End')
  await expect(focused(page)).toHaveAccessibleName(/on the critical run$/)
  const last = await focused(page).getAttribute('aria-label')
  await page.keyboard.press('ArrowLeft')
  await expect(focused(page)).toHaveAccessibleName(/on the critical run$/)
  const before = await focused(page).getAttribute('aria-label')
  expect(before).not.toBe(last)
  await page.keyboard.press('ArrowRight')
  await expect(focused(page)).toHaveAccessibleName(last ?? '')

  // What lies behind a card follows the keys, and is the next stop of the tab key.
  await page.keyboard.press('Enter')
  const link = page.getByRole('link', { name: /^Open \d+$/ })
  await expect(link).toHaveText(`Open ${last?.split(' ')[0]}`)
  await page.keyboard.press('ArrowLeft')
  await expect(link).toHaveText(`Open ${before?.split(' ')[0]}`)
  await page.keyboard.press('ArrowUp')
  await expect(link).not.toHaveText(`Open ${before?.split(' ')[0]}`)
  await page.keyboard.press('Escape')
  await expect(link).toHaveCount(0)
  await page.keyboard.press('Enter')
  const number = (await link.textContent())?.replace('Open ', '') ?? ''
  await page.keyboard.press('Tab')
  await expect(link).toBeFocused()
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/\/stages\/stg_/)
  await expect(page.locator('.card .num').first()).toHaveText(number)
})

test('the wall comes nearer and goes further by press and by key, keeps its day, and is found so again', async ({
  as,
}) => {
  const page = await as('Mara Ellwood')
  await page.setViewportSize(DESK)
  const path = `${await carPath(page)}/build-order`
  await page.goto(path)
  const wall = wallOf(page)
  const nearness = (name: string) => page.getByRole('button', { name, exact: true })
  await expect(nearness('Weeks')).toHaveAttribute('aria-pressed', 'true')
  const atToday = await along(wall)
  expect(atToday).toBeGreaterThan(0)

  await wall.evaluate((region) => region.scrollTo({ left: 0 }))
  await page.getByRole('button', { name: 'To today' }).click()
  expect(Math.abs((await along(wall)) - atToday)).toBeLessThan(3)

  const width = () => wall.evaluate((region) => region.scrollWidth)
  const weeks = await width()
  await nearness('Days').click()
  expect(await width()).toBeGreaterThan(weeks * 2)
  // The string of today is where it was to be seen before: in the window.
  await expect(page.locator('.drawn-today')).toBeInViewport()
  await wall.locator('.tile[tabindex="0"]').focus()
  await page.keyboard.press('-')
  await page.keyboard.press('-')
  await expect(nearness('Months')).toHaveAttribute('aria-pressed', 'true')
  expect(await width()).toBeLessThan(weeks)
  await page.reload()
  await expect(nearness('Months')).toHaveAttribute('aria-pressed', 'true')
  await wall.locator('.tile[tabindex="0"]').focus()
  await page.keyboard.press('+')
  await expect(nearness('Weeks')).toHaveAttribute('aria-pressed', 'true')

  await wall.evaluate((region) => region.scrollTo({ left: 0 }))
  await page.keyboard.press('t')
  expect(Math.abs((await along(wall)) - atToday)).toBeLessThan(3)
})

test('no name on the wall lies on another card, near or far', async ({ as }) => {
  const page = await as('Mara Ellwood')
  await page.setViewportSize(DESK)
  await page.goto(`${await carPath(page)}/build-order`)
  for (const nearness of ['Weeks', 'Months', 'Days']) {
    await page.getByRole('button', { name: nearness, exact: true }).click()
    const lie = await wallOf(page).evaluate((region) => {
      const inked = [...region.querySelectorAll('.tile-bar, .tile-behind, .tile-name, .tile-cure')]
      const boxes = inked.map((e) => ({ box: e.getBoundingClientRect(), tile: e.parentElement }))
      return {
        count: boxes.length,
        over: boxes.flatMap((a, n) =>
          boxes
            .slice(n + 1)
            .filter(
              (b) =>
                a.tile !== b.tile &&
                a.box.left < b.box.right &&
                b.box.left < a.box.right &&
                a.box.top < b.box.bottom &&
                b.box.top < a.box.bottom,
            )
            .map((b) => `${a.tile?.ariaLabel} / ${b.tile?.ariaLabel}`),
        ),
      }
    })
    expect(lie.count).toBeGreaterThan(100)
    expect(lie.over).toEqual([])
  }
})

test('the list says all that is drawn, in order by any column, and the keys walk it', async ({
  as,
}) => {
  const page = await as('Mara Ellwood')
  await page.setViewportSize(DESK)
  await page.goto(`${await carPath(page)}/build-order`)
  const table = page.getByRole('table', { name: 'The stages' })
  await page.getByLabel('Grouped').selectOption('number')
  for (const fold of await table.getByRole('button', { name: /^Show \d+ signed off$/ }).all())
    await fold.click()
  // The drawing comes after the list.
  await expect(wallOf(page).locator('.tile').first()).toBeVisible()
  const drawn = await wallOf(page)
    .locator('.tile')
    .evaluateAll((tiles) => tiles.map((tile) => tile.getAttribute('aria-label') ?? ''))
  const rows = table.locator('tr.stage-row')
  await expect(rows).toHaveCount(drawn.length)
  const listed = await rows.evaluateAll((all) =>
    all.map((row) => row.querySelector('a')?.textContent ?? ''),
  )
  for (const name of listed) expect(drawn.some((says) => says.startsWith(name))).toBe(true)

  const numbers = () => rows.locator('.num').allTextContents()
  await table.getByRole('button', { name: 'No.' }).click()
  await table.getByRole('button', { name: 'No.' }).click()
  await expect(table.getByRole('columnheader', { name: 'No.' })).toHaveAttribute(
    'aria-sort',
    'descending',
  )
  expect(await numbers()).toEqual((await numbers()).toSorted((a, b) => Number(b) - Number(a)))

  await page.getByLabel('Shop').selectOption({ label: 'Thistle & Welt' })
  await expect(rows.first()).toContainText('Thistle & Welt')
  await expect(wallOf(page).locator('.tile')).toHaveCount(await rows.count())
  await rows.first().getByRole('link').focus()
  await page.keyboard.press('End')
  await expect(rows.last().getByRole('link')).toBeFocused()
  await page.keyboard.press('ArrowUp')
  await page.keyboard.press('Enter')
  await expect(page).toHaveURL(/\/stages\/stg_/)
})

test('on a phone the weeks come first, and the drawing when it is asked for', async ({ as }) => {
  const page = await as('Jory Wenlock')
  await page.goto(`${await carPath(page)}/build-order`)
  await expect(page.getByText('This week')).toBeVisible()
  await expect(wallOf(page)).toHaveCount(0)
  await page.getByRole('button', { name: 'Draw it along the days' }).click()
  const tile = wallOf(page).getByRole('button', { name: /^43 Engine ready to fit, In work/ })
  await tile.click()
  const sheet = page.getByRole('region', { name: '43 Engine ready to fit' })
  await expect(sheet).toBeInViewport()
  await expect(sheet).toContainText('before the end moves')
  await sheet.getByRole('button', { name: 'Close' }).click()
  await expect(sheet).toHaveCount(0)
  await expect(tile).toBeFocused()
  await page.getByRole('button', { name: 'Put the drawing away' }).click()
  await expect(wallOf(page)).toHaveCount(0)
})
