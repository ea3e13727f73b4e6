import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'
import {
  crampedTargets,
  cutOff,
  outOfOrder,
  pastTheEdge,
  tooClose,
  unseenMarks,
} from './measure.ts'

const PHONE = { width: 390, height: 844 }
/** From the narrowest that is promised to a big desk. 640 is 1280 at twice its size (WCAG 2.2, 1.4.4 and 1.4.10). */
const WIDTHS = [320, 360, 640, 768, 1280, 1920]

/** What axe finds, in the theme that is on. Of a second theme only the colours are new. */
async function violations(page: Page, theme: string, rules?: string[]): Promise<readonly string[]> {
  const axe = new AxeBuilder({ page }).setLegacyMode(true)
  const { violations, passes } = await (rules === undefined ? axe : axe.withRules(rules)).analyze()
  expect(passes.length).toBeGreaterThan(0)
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${theme}: ${id} at ${node.target.join(' ')}: ${node.failureSummary}`),
  )
}

/** What keeps somebody from reading or pressing what is at that address: by day and by night, at every width, in big letters. */
export async function faultsAt(page: Page, path: string): Promise<readonly string[]> {
  await page.setViewportSize(PHONE)
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' })
  const answer = await page.goto(path)
  expect(answer?.ok(), `${path} answers`).toBe(true)
  await expect(page.locator('main')).toBeVisible()
  const found = [
    ...(await violations(page, 'card')),
    ...(await page.evaluate(crampedTargets)),
    ...(await page.evaluate(tooClose)),
    ...(await page.evaluate(outOfOrder)),
    ...(await page.evaluate(pastTheEdge)),
    ...(await page.evaluate(cutOff)),
  ]
  await page.emulateMedia({ colorScheme: 'dark' })
  found.push(...(await violations(page, 'booth', ['color-contrast'])))
  await page.emulateMedia({ forcedColors: 'active' })
  found.push(...(await page.evaluate(unseenMarks)))
  await page.emulateMedia({ forcedColors: 'none' })
  for (const width of WIDTHS) {
    await page.setViewportSize({ width, height: 800 })
    found.push(...(await page.evaluate(pastTheEdge)), ...(await page.evaluate(cutOff)))
    if (width === 1280) found.push(...(await page.evaluate(crampedTargets)))
  }
  found.push(...(await inBigLetters(page)))
  return found
}

/** The same with letters twice as big and all else as it is. */
async function inBigLetters(page: Page): Promise<readonly string[]> {
  await page.setViewportSize({ width: 1280, height: 800 })
  const big = await page.evaluateHandle(() => {
    document.documentElement.style.fontSize = '200%'
    return document.documentElement
  })
  const found = [...(await page.evaluate(pastTheEdge)), ...(await page.evaluate(cutOff))]
  await big.evaluate((root) => root.style.removeProperty('font-size'))
  return found.map((fault) => `in big letters, ${fault}`)
}
