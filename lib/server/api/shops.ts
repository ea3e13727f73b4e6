import type { Hono } from 'hono'
import * as z from 'zod/mini'
import type { Doors } from '../doors.ts'
import { checked, orNotFound, signedIn } from './door.ts'

const ChangesQuery = z.object({ after: z.string().check(z.regex(/^\d{1,10}$/, 'a version')) })

/** Shop books, to their own people. */
export function shopRoutes(api: Hono, { sessions, views }: Doors): void {
  api.get('/shops/:id', async (context) => {
    const { person } = await signedIn(context, sessions)
    return context.json(orNotFound(await views.shop(person, context.req.param('id'))))
  })

  api.get('/shops/:id/changes', async (context) => {
    const { person } = await signedIn(context, sessions)
    const { after } = checked(context.req.query(), ChangesQuery)
    const changed = await views.shopChanges(person, context.req.param('id'), Number(after))
    return context.json(orNotFound(changed))
  })

  api.get('/shops/:id/day-sheet', async (context) => {
    const { person } = await signedIn(context, sessions)
    return context.json(orNotFound(await views.daySheet(person, context.req.param('id'))))
  })
}
