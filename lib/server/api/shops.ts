import type { Hono } from 'hono'
import * as z from 'zod/mini'
import type { Doors } from '../doors.ts'
import { checked, lookerIn, orNotFound } from './door.ts'

const ChangesQuery = z.object({ after: z.string().check(z.regex(/^\d{1,10}$/, 'a version')) })

/** Shop books, to their own people and phones. */
export function shopRoutes(api: Hono, doors: Doors): void {
  const { views } = doors

  api.get('/shops/:id', async (context) => {
    const who = await lookerIn(context, doors)
    return context.json(orNotFound(await views.shop(who, context.req.param('id'))))
  })

  api.get('/shops/:id/changes', async (context) => {
    const who = await lookerIn(context, doors)
    const { after } = checked(context.req.query(), ChangesQuery)
    const changed = await views.shopChanges(who, context.req.param('id'), Number(after))
    return context.json(orNotFound(changed))
  })

  api.get('/shops/:id/day-sheet', async (context) => {
    const who = await lookerIn(context, doors)
    return context.json(orNotFound(await views.daySheet(who, context.req.param('id'))))
  })
}
