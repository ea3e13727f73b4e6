import type { JSHandle, Page } from '@playwright/test'
import * as z from 'zod/mini'
import { against, type Bench, type Figure, quantile } from '../../lib/bin/figure.ts'
import { aPhone, withBrowser } from './browser.ts'
import { type Connection, openConnection } from './http-client.ts'
import { type Rival, type Rivals, withRivals } from './rivals.ts'

const NAME = 'live/commit-to-screen'
const PRESSES = 200
const WARM = 10
/** Between two presses, in ms: a person's, not a machine's. */
const PAUSE_MS = 50

/**
 * How long it takes, in ms, from sending a press until another browser's screen says it: an assembly's new name among a build
 * order of 120 stages. Against a bare server that commits the same and tells all sockets, with a page that does no more than
 * put the name there.
 */
export const bench: Bench = {
  names: [`${NAME}-p50`, `${NAME}-p99`],
  async *run() {
    for (const figure of await withRivals(1, measure, { plain: ['live'] })) yield figure
  },
}

interface Side {
  readonly rival: Rival
  readonly connection: Connection
  readonly page: Page
  readonly took: number[]
}

const measure = (rivals: Rivals): Promise<Figure[]> =>
  withBrowser(async (browser) => {
    const open = async (rival: Rival, path: string, cookie?: string): Promise<Side> => {
      const phone = await aPhone(browser, `http://127.0.0.1:${rival.port}`, cookie)
      const page = await phone.newPage()
      await page.goto(path, { waitUntil: 'networkidle' })
      return { rival, page, connection: await openConnection(rival.port), took: [] }
    }
    const [project] = rivals.projects
    const ours = await open(rivals.ours, `/p/${project}/build-order`, rivals.onlooker)
    const plain = await open(rivals.plain, '/')
    for (let press = 0; press < WARM + PRESSES; press++) {
      for (const side of [ours, plain]) {
        const took = await pressUntilSeen(side)
        if (press >= WARM) side.took.push(took)
        await side.page.waitForTimeout(PAUSE_MS)
      }
    }
    for (const { connection } of [ours, plain]) connection.close()
    const figure = (suffix: string, part: number) =>
      against(
        `${NAME}-${suffix}`,
        'ms',
        'lower',
        quantile(ours.took, part),
        quantile(plain.took, part),
      )
    return [figure('p50', 0.5), figure('p99', 0.99)]
  })

/** The name that a press gives, as either side is sent it. */
const Named = z.union([
  z.object({ input: z.object({ name: z.string() }) }),
  z.object({ name: z.string() }),
])

async function pressUntilSeen({ rival, connection, page }: Side): Promise<number> {
  const { head, body } = rival.next()
  const press = Named.parse(JSON.parse(body))
  const screen = await watch(page, 'input' in press ? press.input.name : press.name)
  const sent = Date.now()
  const answer = await connection.post(head, body)
  if (answer.status !== 200) throw new Error(`${answer.status}: ${answer.body.slice(0, 500)}`)
  const seen = await screen.evaluate((watched) => watched.seen)
  await screen.dispose()
  return seen - sent
}

/** When the page's text has `text` in it, by the clock that both browser and bench read. */
const watch = (page: Page, text: string): Promise<JSHandle<{ readonly seen: Promise<number> }>> =>
  page.evaluateHandle((wanted) => {
    const seen = new Promise<number>((resolve) => {
      const observer = new MutationObserver(() => {
        if (document.body.textContent?.includes(wanted) !== true) return
        observer.disconnect()
        resolve(Date.now())
      })
      observer.observe(document.body, { subtree: true, childList: true, characterData: true })
    })
    return { seen }
  }, text)
