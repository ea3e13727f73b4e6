import type { Page } from '@playwright/test'
import * as z from 'zod/mini'
import { newKey } from '../../lib/live/new-key.ts'

const Me = z.object({
  projects: z.array(z.object({ id: z.string(), name: z.string() })),
  shops: z.array(z.object({ id: z.string(), name: z.string() })),
})
const View = z.object({
  version: z.number(),
  entities: z.array(
    z.looseObject({
      kind: z.string(),
      id: z.string(),
      name: z.optional(z.nullable(z.string())),
      title: z.optional(z.nullable(z.string())),
      question: z.optional(z.string()),
    }),
  ),
})

const MAIN = 'Averley'

/** Address of a car, the main one unless another is named, as whoever is signed in on that page has it. */
export async function carPath(page: Page, name = MAIN): Promise<string> {
  const me = Me.parse(await (await page.request.get('/api/me')).json())
  const project = me.projects.find((one) => one.name.includes(name))
  if (project === undefined) throw new Error(`${name} isn’t among these projects.`)
  return `/p/${project.id}`
}

/** Address of the first shop of whoever is signed in on that page. */
export async function shopPath(page: Page): Promise<string> {
  const me = Me.parse(await (await page.request.get('/api/me')).json())
  const shop = me.shops[0]
  if (shop === undefined) throw new Error('Nobody of a shop.')
  return `/shops/${shop.id}`
}

const screens: { readonly [kind: string]: string } = {
  stage: 'stages',
  changeOrder: 'change-orders',
  handover: 'handovers',
  decision: 'decisions',
  part: 'parts',
}

type Found = z.infer<typeof View>['entities'][number]

/** The first entity of a kind that `is` so, as this view may see it. */
export async function find(
  page: Page,
  kind: string,
  is: (entity: Found) => boolean = () => true,
  car?: string,
): Promise<Found> {
  const path = car ?? (await carPath(page))
  const answer = await page.request.get(`/api${path.replace('/p/', '/projects/')}`)
  const found = View.parse(await answer.json()).entities.find((e) => e.kind === kind && is(e))
  if (found === undefined) throw new Error(`There is no such ${kind}.`)
  return found
}

/** Address of the first whose name, title or question begins so. */
export async function pathTo(page: Page, kind: string, named: string): Promise<string> {
  const car = await carPath(page)
  const { id } = await find(
    page,
    kind,
    ({ name, title, question }) => (name ?? title ?? question ?? '').startsWith(named),
    car,
  )
  return `${car}/${screens[kind]}/${id}`
}

/** Sends a command past the screens, as whoever is signed in on that page, and gives the answer's status and words. */
export async function sendPast(
  page: Page,
  name: string,
  input: { readonly [field: string]: unknown },
): Promise<{ readonly status: number; readonly body: string }> {
  const now = Date.now()
  const answer = await page.request.post('/api/commands', {
    headers: { origin: new URL(page.url()).origin },
    data: { name, input, key: newKey(now), happenedAt: new Date(now).toISOString() },
  })
  return { status: answer.status(), body: await answer.text() }
}
