import type { Context, Hono } from 'hono'
import * as z from 'zod/mini'
import { writeBuildOrder } from '../../build-order/csv/write-build-order.ts'
import { ProjectId } from '../../record/ids.ts'
import { Instant } from '../../record/scalars.ts'
import { all } from '../../record/table.ts'
import { viewOf } from '../../see/view-of.ts'
import type { Doors } from '../doors.ts'
import type { JournalFilter } from '../for-pages.ts'
import { personsIn } from '../views/changed-for.ts'
import { journalPage } from '../views/journal-view.ts'
import { checked, lookerIn, meIn, orNotFound } from './door.ts'

const Version = z.string().check(z.regex(/^\d{1,10}$/, 'a version, such as 12'))
const ChangesQuery = z.object({ after: Version })
const AsOfQuery = z.object({ at: Instant })
const JournalQuery = z.object({
  before: z.optional(Version),
  limit: z.optional(Version),
  person: z.optional(z.string()),
  command: z.optional(z.string()),
  entity: z.optional(z.string()),
})

/** Projects as the person who is signed in may see them. */
export function projectRoutes(api: Hono, doors: Doors): void {
  const { reading, names, views } = doors

  api.get('/projects', async (context) => context.json((await meIn(context, doors)).projects))

  api.get('/projects/:id', async (context) => {
    const who = await lookerIn(context, doors)
    return context.json(orNotFound(await views.project(who, context.req.param('id'))))
  })

  api.get('/projects/:id/changes', async (context) => {
    const who = await lookerIn(context, doors)
    const { after } = checked(context.req.query(), ChangesQuery)
    const changed = await views.projectChanges(who, context.req.param('id'), Number(after))
    return context.json(orNotFound(changed))
  })

  api.get('/projects/:id/as-of', async (context) => {
    const who = await lookerIn(context, doors)
    const { at } = checked(context.req.query(), AsOfQuery)
    return context.json(orNotFound(await views.asOf(who, context.req.param('id'), at)))
  })

  api.get('/projects/:id/journal', async (context) => {
    const who = await lookerIn(context, doors)
    const filter = filterOf(context)
    const page = await journalPage(doors, who, context.req.param('id'), filter)
    return context.json(orNotFound(page))
  })

  api.get('/projects/:id/build-order.csv', async (context) => {
    const who = await lookerIn(context, doors)
    const project = ProjectId.safeParse(context.req.param('id'))
    const record = project.success ? await reading.project(project.data) : null
    const view = record === null ? null : await reading.viewOf(who, record)
    const { seen } = orNotFound(record && view && { seen: viewOf(record, view) })
    const holds = all(seen.holds)
    const people = await names(personsIn(holds))
    const named = holds.flatMap(({ person: holder, party }) => {
      const name = holder === null ? undefined : people[holder]
      return holder === null || name === undefined ? [] : [{ person: holder, party, name }]
    })
    context.header('content-type', 'text/csv; charset=utf-8')
    context.header('content-disposition', 'attachment; filename="build-order.csv"')
    return context.body(writeBuildOrder(seen, named))
  })
}

function filterOf(context: Context): JournalFilter {
  const { before, limit, ...rest } = checked(context.req.query(), JournalQuery)
  const number = (text: string | undefined) => (text === undefined ? undefined : Number(text))
  return { ...rest, before: number(before), limit: number(limit) }
}
