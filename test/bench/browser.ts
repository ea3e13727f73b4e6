import { type Browser, type BrowserContext, chromium, devices } from '@playwright/test'
import { FLAGS } from '../../e2e/flags.ts'
import { chromium as executable } from '../../lib/bin/chromium.ts'

/** Runs `work` with a Chromium of its own. */
export async function withBrowser<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await chromium.launch({ executablePath: await executable(), args: FLAGS })
  try {
    return await work(browser)
  } finally {
    await browser.close()
  }
}

/** A phone that has nothing yet, signed in by that `name=value` cookie where one is given. */
export async function aPhone(
  browser: Browser,
  url: string,
  cookie?: string,
): Promise<BrowserContext> {
  const phone = await browser.newContext({
    ...devices['Pixel 7'],
    viewport: { width: 390, height: 844 },
    locale: 'en-GB',
    timezoneId: 'Europe/London',
    baseURL: url,
  })
  if (cookie !== undefined) {
    const at = cookie.indexOf('=')
    await phone.addCookies([{ name: cookie.slice(0, at), value: cookie.slice(at + 1), url }])
  }
  return phone
}
