import type { Browser, Locator, Page } from '@playwright/test'
import { carPath, pathTo, shopPath } from '../../e2e/demo/find.ts'
import { aPhone } from './browser.ts'

/** A screen that people open on a phone: who, where it is for them, and what is pressed there that changes no record. */
export interface PhonePage {
  readonly name: string
  readonly person: string
  readonly path: (page: Page) => Promise<string>
  readonly presses: readonly ((page: Page) => Locator)[]
}

const button = (name: string | RegExp) => (page: Page) => page.getByRole('button', { name }).first()

/** The four that are opened most. */
export const PHONE_PAGES: readonly PhonePage[] = [
  { name: 'owners-car', person: 'Ines Halloran', path: (page) => carPath(page), presses: [] },
  {
    name: 'change-order',
    person: 'Ines Halloran',
    path: (page) => pathTo(page, 'changeOrder', 'Carburettors'),
    presses: [
      button('Ask first'),
      (page) => page.getByRole('textbox').first(),
      button('Decline'),
      button('Not yet'),
    ],
  },
  { name: 'day-sheet', person: 'Jory Wenlock', path: shopPath, presses: [] },
  {
    name: 'stage',
    person: 'Jory Wenlock',
    path: (page) => pathTo(page, 'stage', 'Engine ready to fit'),
    presses: [(page) => page.getByLabel(/^Reading/).first()],
  },
]

/** Comes in by the demonstration's door: the session's cookie, and where the screen is for that person. */
export async function comeIn(
  browser: Browser,
  url: string,
  { person, path }: Pick<PhonePage, 'person' | 'path'>,
): Promise<{ readonly at: string; readonly cookie: string }> {
  const phone = await aPhone(browser, url)
  const page = await phone.newPage()
  await page.goto('/sign-in?again=1')
  await page.getByRole('button', { name: `Sign in as ${person}` }).click()
  await page.waitForURL((address) => !address.pathname.startsWith('/sign-in'))
  const at = await path(page)
  const session = (await phone.cookies()).find(({ name }) => name.endsWith('session-token'))
  await phone.close()
  if (session === undefined) throw new Error(`${person} was not signed in.`)
  return { at, cookie: `${session.name}=${session.value}` }
}
