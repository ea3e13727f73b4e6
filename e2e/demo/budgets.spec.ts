import { gzipSync } from 'node:zlib'
import { expect, type Page, type Response } from '@playwright/test'
import { carPath, pathTo, shopPath } from './find.ts'
import { enter, test } from './loaded.ts'

/** Scripts of an empty page of this Next, in kB by gzip, without those that only old browsers load. */
const EMPTY_KB = 147
/** What is fetched once something stands on the screen: the screen's presses, the socket, commands, the outbox. */
const LATER_MOST_KB = 150
const FONTS_MOST_KB = 80

/** Pages with a budget: who opens them, where, and what they may load beyond an empty one before the first paint. */
const PAGES: readonly {
  readonly name: string
  readonly who: string
  readonly path: (page: Page) => Promise<string>
  readonly moreKb: number
}[] = [
  { name: 'the owner’s car', who: 'Ines Halloran', path: (page) => carPath(page), moreKb: 25 },
  {
    name: 'a change order',
    who: 'Ines Halloran',
    path: (page) => pathTo(page, 'changeOrder', 'Carburettors'),
    moreKb: 25,
  },
  { name: 'the day sheet', who: 'Jory Wenlock', path: shopPath, moreKb: 40 },
]

for (const { name, who, path, moreKb } of PAGES) {
  test(`${name} weighs little on a phone that has nothing of it yet`, async ({ page, yard }) => {
    await enter(page, who, '/account')
    const at = await path(page)
    // Else the former page's last answers count as this one's.
    await page.waitForLoadState('networkidle')
    // What the way here has fetched counts again.
    const wire = await page.context().newCDPSession(page)
    await wire.send('Network.setCacheDisabled', { cacheDisabled: true })
    const answers: Response[] = []
    page.on('response', (answer) => answers.push(answer))
    await page.goto(at, { waitUntil: 'networkidle' })

    const ofType = (type: string) =>
      answers.filter((answer) => answer.request().resourceType() === type && answer.ok())
    const paintedMs = await page.evaluate(
      () => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0,
    )
    expect(paintedMs).toBeGreaterThan(0)
    const startedMs = new Map(
      await page.evaluate(() =>
        performance
          .getEntriesByType('resource')
          .map(({ name, startTime }): [string, number] => [name, startTime]),
      ),
    )
    const served = await (await page.request.get(at)).text()
    const isFirst = (answer: Response) =>
      served.includes(new URL(answer.url()).pathname) ||
      (startedMs.get(answer.url()) ?? 0) <= paintedMs
    const scripts = ofType('script')
    const first = await gzippedKb(scripts.filter(isFirst))
    const later = await gzippedKb(scripts.filter((answer) => !isFirst(answer)))
    const fonts = await gzippedKb(ofType('font'))
    test.info().annotations.push({
      type: 'kB',
      description: `first ${first.toFixed(1)}, later ${later.toFixed(1)}, fonts ${fonts.toFixed(1)}`,
    })
    expect(first).toBeGreaterThan(100)
    expect(first).toBeLessThanOrEqual(EMPTY_KB + moreKb)
    expect(later).toBeLessThanOrEqual(LATER_MOST_KB)
    expect(fonts).toBeGreaterThan(0)
    expect(fonts).toBeLessThanOrEqual(FONTS_MOST_KB)

    const plain = answers.filter(
      (answer) =>
        /^(text\/|application\/(javascript|json|manifest\+json)|image\/svg)/.test(
          answer.headers()['content-type'] ?? '',
        ) && !/^(br|gzip|zstd)$/.test(answer.headers()['content-encoding'] ?? ''),
    )
    const long: string[] = []
    for (const answer of plain) {
      // Some hundred bytes only grow by it.
      if (answer.ok() && (await answer.body()).length > 1024) long.push(answer.url())
    }
    expect(long).toEqual([])
    expect([...new Set(answers.map((answer) => new URL(answer.url()).origin))]).toEqual([
      new URL(yard.url).origin,
    ])
  })
}

async function gzippedKb(answers: readonly Response[]): Promise<number> {
  let sum = 0
  for (const answer of answers) sum += gzipSync(await answer.body()).length
  return sum / 1000
}
