import type { Browser } from '@playwright/test'
import { carPath, pathTo, shopPath } from '../../e2e/demo/find.ts'
import { against, type Bench } from '../../lib/bin/figure.ts'
import { aPhone, withBrowser } from './browser.ts'
import { withLoadedYard } from './loaded-yard.ts'
import { comeIn, PHONE_PAGES, type PhonePage } from './phone-pages.ts'

/** Screens that people open on a phone: who, and where it is for them. */
const PAGES: readonly Pick<PhonePage, 'name' | 'person' | 'path'>[] = [
  ...PHONE_PAGES,
  { name: 'handover', person: 'Mara Ellwood', path: (page) => pathTo(page, 'handover', '') },
  {
    name: 'build-order',
    person: 'Mara Ellwood',
    path: async (page) => `${await carPath(page)}/build-order`,
  },
  { name: 'diary', person: 'Sorrel Penn', path: async (page) => `${await shopPath(page)}/diary` },
  {
    name: 'journal',
    person: 'Ines Halloran',
    path: async (page) => `${await carPath(page)}/journal`,
  },
]

/**
 * What a phone that has nothing yet transfers until the network is quiet, in kB as compressed on the way: `-js` scripts alone,
 * else HTML, scripts, styles and fonts. Against a page of the same server with nothing on it but the words that there is no
 * such page.
 */
export const bench: Bench = {
  names: PAGES.flatMap(({ name }) => [`page/${name}`, `page/${name}-js`]),
  async *run(isWanted) {
    const wanted = PAGES.filter(
      ({ name }) => isWanted(`page/${name}`) || isWanted(`page/${name}-js`),
    )
    const weights = await withLoadedYard(({ url }) =>
      withBrowser(async (browser) => {
        const found = []
        for (const { name, person, path } of wanted) {
          const { cookie, at } = await comeIn(browser, url, { person, path })
          const ours = await weigh(browser, url, at, cookie)
          found.push({ name, ours, empty: await weigh(browser, url, '/no-such-page', cookie) })
        }
        return found
      }),
    )
    for (const { name, ours, empty } of weights) {
      yield against(`page/${name}`, 'kB', 'lower', ours.all, empty.all)
      yield against(`page/${name}-js`, 'kB', 'lower', ours.scripts, empty.scripts)
    }
  },
}

const COUNTED = new Set(['Document', 'Script', 'Stylesheet', 'Font'])

/** A first visit, in kB. */
async function weigh(browser: Browser, url: string, path: string, cookie: string) {
  const phone = await aPhone(browser, url, cookie)
  const page = await phone.newPage()
  const wire = await phone.newCDPSession(page)
  const types = new Map<string, string>()
  const sum = { all: 0, scripts: 0 }
  wire.on('Network.responseReceived', ({ requestId, type }) => types.set(requestId, type))
  wire.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const type = types.get(requestId) ?? ''
    if (COUNTED.has(type)) sum.all += encodedDataLength / 1000
    if (type === 'Script') sum.scripts += encodedDataLength / 1000
  })
  await wire.send('Network.enable')
  await page.goto(path, { waitUntil: 'networkidle' })
  await phone.close()
  return sum
}
