import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { BrowserContext, Page } from '@playwright/test'
import * as z from 'zod/mini'
import { against, type Bench, type Figure, quantile, rounded } from '../../lib/bin/figure.ts'
import { aPhone, withBrowser } from './browser.ts'
import { withLoadedYard } from './loaded-yard.ts'
import { comeIn, PHONE_PAGES, type PhonePage } from './phone-pages.ts'

/** How often each page is opened, by turns with the empty one. */
const ROUNDS = 5
/** Google's own measure of LCP, CLS and INP, in the page before any of its scripts. */
const VITALS = readFileSync(
  fileURLToPath(import.meta.resolve('web-vitals')).replace(/web-vitals\.js$/, 'web-vitals.iife.js'),
  'utf8',
)
/** A tin shed with one bar: 1.6 Mbit/s and 150 ms, on a phone four times slower than this machine. */
const SLOWER = 4
const NETWORK = {
  offline: false,
  latency: 150,
  downloadThroughput: 1_600_000 / 8,
  uploadThroughput: 750_000 / 8,
}
/** The shortest press that Chromium tells of, in ms: what is not told of took less. */
const LEAST_INP_MS = 16
/** Between two presses, in ms. */
const PAUSE_MS = 250

/** What one visit measured: ms, no unit, ms. */
const Visit = z.object({ lcp: z.number(), cls: z.number(), inp: z.number() })
type Visit = z.infer<typeof Visit>
const METRICS = [
  { name: 'lcp', unit: 'ms' },
  { name: 'cls', unit: '1' },
  { name: 'inp', unit: 'ms' },
] as const

/**
 * Largest contentful paint, layout shift and the slowest press over scripted use of the phone pages, each the 75th percentile
 * of the visits (as web.dev/vitals judges them), on a slow phone with a poor network, against a page of the same server that
 * has nothing on it, by turns.
 */
export const bench: Bench = {
  names: PHONE_PAGES.flatMap(({ name }) => METRICS.map((metric) => `page/${name}-${metric.name}`)),
  async *run(isWanted) {
    const wanted = PHONE_PAGES.filter(({ name }) =>
      METRICS.some((metric) => isWanted(`page/${name}-${metric.name}`)),
    )
    const figures = await withLoadedYard(({ url }) =>
      withBrowser(async (browser) => {
        const found: Figure[] = []
        for (const page of wanted) {
          const { cookie, at } = await comeIn(browser, url, page)
          const ours: Visit[] = []
          const empty: Visit[] = []
          for (let round = 0; round < ROUNDS; round++) {
            ours.push(await visit(await aPhone(browser, url, cookie), at, page.presses))
            empty.push(await visit(await aPhone(browser, url, cookie), '/no-such-page', []))
          }
          found.push(...figuresOf(page.name, ours, empty))
        }
        return found
      }),
    )
    for (const figure of figures) yield figure
  },
}

function figuresOf(name: string, ours: readonly Visit[], empty: readonly Visit[]): Figure[] {
  return METRICS.map((metric) => {
    const p75 = (visits: readonly Visit[]) =>
      quantile(
        visits.map((visit) => visit[metric.name]),
        0.75,
      )
    const full = `page/${name}-${metric.name}`
    const [value, baseline] = [p75(ours), p75(empty)]
    if (baseline > 0) return against(full, metric.unit, 'lower', value, baseline)
    // Nothing moves on an empty page: a ratio to it says nothing.
    return { name: full, value: rounded(value), unit: metric.unit, baseline, better: 'lower' }
  })
}

async function visit(
  phone: BrowserContext,
  path: string,
  presses: PhonePage['presses'],
): Promise<Visit> {
  const page = await phone.newPage()
  const wire = await phone.newCDPSession(page)
  await wire.send('Network.enable')
  await wire.send('Network.emulateNetworkConditions', NETWORK)
  await wire.send('Emulation.setCPUThrottlingRate', { rate: SLOWER })
  await page.addInitScript(
    `${VITALS};self.seen = { lcp: 0, cls: 0, inp: 0 };` +
      'const note = ({ name, value }) => { seen[name.toLowerCase()] = value };' +
      'const all = { reportAllChanges: true, durationThreshold: 16 };' +
      'webVitals.onLCP(note, all); webVitals.onCLS(note, all); webVitals.onINP(note, all);',
  )
  await page.goto(path, { waitUntil: 'commit' })
  await page.locator('main, body').first().waitFor()
  await use(page, presses)
  const found = await seen(page)
  await phone.close()
  return { ...found, inp: Math.max(found.inp, LEAST_INP_MS) }
}

/** What the page has measured so far. */
const seen = async (page: Page): Promise<Visit> => Visit.parse(await page.evaluate('self.seen'))

/** A person's use: reads down and up while it loads, then every fold, what is offered here, and some words. */
async function use(page: Page, presses: PhonePage['presses']): Promise<void> {
  // The first press ends what LCP looks at, so it waits for the paint; it may still meet the start of the scripts.
  while ((await seen(page)).lcp === 0) await page.waitForTimeout(PAUSE_MS / 5)
  await page.waitForLoadState('load')
  const still = page.locator('h1, h2').first()
  for (let early = 0; early < 4; early++) {
    await still.tap()
    await page.waitForTimeout(PAUSE_MS)
  }
  await page.waitForLoadState('networkidle')
  for (const by of [600, 600, -1200]) {
    await page.mouse.wheel(0, by)
    await page.waitForTimeout(PAUSE_MS)
  }
  const folds = page.locator('main summary:visible')
  for (let n = 0; n < Math.min(4, await folds.count()); n++) {
    await folds.nth(n).tap()
    await page.waitForTimeout(PAUSE_MS)
  }
  for (const press of presses) {
    const target = press(page)
    const takesWords = await target.evaluate((e) => e.matches('input, textarea'))
    await target.tap()
    await page.waitForTimeout(PAUSE_MS)
    if (takesWords) {
      await page.keyboard.type('3.8', { delay: PAUSE_MS / 2 })
      await page.waitForTimeout(PAUSE_MS)
    }
  }
  // Two frames on, all that was pressed has been painted and told of.
  await page.waitForTimeout(2 * PAUSE_MS)
}
