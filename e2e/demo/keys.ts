import { expect, type Page } from '@playwright/test'

/** What has the focus: its words, and whether one can see that it has it. */
async function focused(page: Page): Promise<{ readonly words: string; readonly shown: boolean }> {
  return page.evaluate(() => {
    const here = document.activeElement
    if (here === null || here === document.body) return { words: '', shown: false }
    const labels =
      here instanceof HTMLInputElement ||
      here instanceof HTMLTextAreaElement ||
      here instanceof HTMLSelectElement
        ? [...(here.labels ?? [])].map((label) => label.textContent ?? '')
        : []
    const words = [here.getAttribute('aria-label') ?? '', ...labels, here.textContent ?? '']
    // A field drawn by its frame (a choice among cards) shows the focus on the frame.
    const rings = [here, here.closest('.pick'), here.closest('label')].flatMap((one) =>
      one === null ? [] : [getComputedStyle(one)],
    )
    return {
      words: words.join(' ').replaceAll(/\s+/g, ' ').trim(),
      shown: rings.some(
        ({ outlineStyle, outlineWidth }) =>
          outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 2,
      ),
    }
  })
}

/** Longest way by Tab that anybody is asked to go. */
const LONGEST = 90

/** Goes on by Tab, seeing the focus at every step, until it is on what has those words. */
export async function tabTo(page: Page, words: RegExp): Promise<void> {
  const passed: string[] = []
  for (let step = 0; step < LONGEST; step++) {
    await page.keyboard.press('Tab')
    const here = await focused(page)
    passed.push(here.words.slice(0, 40))
    if (here.words === '') continue
    expect(here.shown, `the focus on “${here.words}” can be seen`).toBe(true)
    if (words.test(here.words)) return
  }
  throw new Error(`No Tab leads to ${words}. On the way: ${passed.join(' | ')}`)
}

/** The press for what can't be taken back, by the keys: twice. */
export async function pressTwice(page: Page, words: RegExp): Promise<void> {
  await tabTo(page, words)
  await page.keyboard.press('Enter')
  await expect(page.getByText('Press once more to confirm.')).toBeVisible()
  await page.keyboard.press('Enter')
}

/** Goes somewhere by the palette: opened by its keys, a name typed, Enter. */
export async function goTo(page: Page, typed: string, first: RegExp): Promise<void> {
  // The keys' code comes after the page's.
  await expect(page.getByRole('button', { name: /^Go to/ })).toBeVisible()
  await page.keyboard.press('Control+k')
  await expect(page.getByRole('dialog', { name: 'Go to' })).toBeVisible()
  await expect(page.getByRole('searchbox')).toBeFocused()
  await page.keyboard.type(typed)
  const chosen = page.locator('.place[data-focused]')
  await expect(chosen).toHaveText(first)
  if ((await page.getByRole('option').count()) > 1) {
    await page.keyboard.press('ArrowDown')
    await expect(page.getByRole('option').nth(1)).toHaveAttribute('data-focused')
    await page.keyboard.press('ArrowUp')
    await expect(chosen).toHaveText(first)
  }
  await page.keyboard.press('Enter')
  await expect(page.getByRole('dialog')).toHaveCount(0)
}
