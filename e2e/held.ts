import type { Locator } from '@playwright/test'

/** A little more than a thumb must lie on a press, in ms (`HOLD_MS` of held-press.tsx). */
const HELD_MS = 1_150

/** Holds a press down until it counts. */
export async function hold(press: Locator): Promise<void> {
  await press.scrollIntoViewIfNeeded()
  await press.hover()
  const mouse = press.page().mouse
  await mouse.down()
  await press.page().waitForTimeout(HELD_MS)
  await mouse.up()
}
