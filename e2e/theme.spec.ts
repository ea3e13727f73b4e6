import { expect, type Page } from '@playwright/test'
import { THEME_COOKIE } from '../app/_ui/theme/theme.ts'
import { test } from './yard.ts'

/** Bare floor by day and by night, as the browser says it (tokens.css). */
const FLOOR = { card: 'rgb(195, 199, 198)', booth: 'rgb(14, 17, 18)' } as const

/** What the floor was when something first stood on the screen, and every theme that the page has worn until now. */
async function firstPainted(page: Page): Promise<{ floor: string; worn: readonly string[] }> {
  await page.addInitScript(() => {
    const worn: string[] = []
    const look = () => worn.push(document.documentElement?.dataset.theme ?? 'device')
    new MutationObserver(look).observe(document, {
      attributes: true,
      attributeFilter: ['data-theme'],
      subtree: true,
    })
    new PerformanceObserver(() => {
      look()
      Object.assign(window, {
        painted: { floor: getComputedStyle(document.body).backgroundColor, worn },
      })
    }).observe({ type: 'paint', buffered: true })
  })
  await page.goto('/set-up')
  await expect(page.getByRole('heading').first()).toBeVisible()
  await page.waitForFunction(() => 'painted' in window)
  return page.evaluate(() => Reflect.get(window, 'painted'))
}

for (const theme of ['card', 'booth'] as const) {
  const other = theme === 'card' ? 'dark' : 'light'
  test(`${theme} that was chosen is what is painted first, on a device that is ${other}`, async ({
    page,
    yard,
  }) => {
    await page.emulateMedia({ colorScheme: other })
    await page.context().addCookies([{ name: THEME_COOKIE, value: theme, url: yard.url }])
    const { floor, worn } = await firstPainted(page)
    expect(floor).toBe(FLOOR[theme])
    expect([...new Set(worn)]).toEqual([theme])
  })
}

test('where nothing was chosen, the device decides, also when it changes its mind', async ({
  page,
}) => {
  await page.emulateMedia({ colorScheme: 'dark' })
  expect((await firstPainted(page)).floor).toBe(FLOOR.booth)
  await page.emulateMedia({ colorScheme: 'light' })
  await expect(page.locator('body')).toHaveCSS('background-color', FLOOR.card)
})
