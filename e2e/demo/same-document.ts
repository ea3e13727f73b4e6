import { expect, type Page } from '@playwright/test'

/** Remembers the document that is on show; the answer checks that it is still the same: nothing was reloaded. */
export async function sameDocument(page: Page): Promise<() => Promise<void>> {
  const born = () => page.evaluate(() => performance.timeOrigin)
  const first = await born()
  return async () => expect(await born()).toBe(first)
}
