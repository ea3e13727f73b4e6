import AxeBuilder from '@axe-core/playwright'
import { expect, type Page } from '@playwright/test'
import { crampedTargets, outOfOrder, pastTheEdge } from './measure.ts'

const NARROWEST = { width: 320, height: 640 }
const PHONE = { width: 390, height: 844 }

/** What axe finds serious, in the theme that is on. */
async function serious(page: Page, theme: string): Promise<readonly string[]> {
  const { violations, passes } = await new AxeBuilder({ page }).setLegacyMode(true).analyze()
  expect(passes.length).toBeGreaterThan(0)
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .flatMap(({ id, nodes }) =>
      nodes.map((node) => `${theme}: ${id} at ${node.target.join(' ')}: ${node.failureSummary}`),
    )
}

/** What keeps somebody from reading or pressing what is at that address, on a phone, by day and by night. */
export async function faultsAt(page: Page, path: string): Promise<readonly string[]> {
  await page.setViewportSize(PHONE)
  await page.emulateMedia({ colorScheme: 'light' })
  const answer = await page.goto(path)
  expect(answer?.ok(), `${path} answers`).toBe(true)
  await expect(page.locator('main')).toBeVisible()
  const found = [
    ...(await serious(page, 'card')),
    ...(await page.evaluate(crampedTargets)),
    ...(await page.evaluate(outOfOrder)),
    ...(await page.evaluate(pastTheEdge)),
  ]
  await page.emulateMedia({ colorScheme: 'dark' })
  found.push(...(await serious(page, 'booth')))
  await page.setViewportSize(NARROWEST)
  found.push(...(await page.evaluate(pastTheEdge)))
  return found
}
