import type { Hono } from 'hono'
import * as z from 'zod/mini'
import type { Doors } from '../doors.ts'
import { meOf } from '../people/me.ts'
import { addressOf, bodyOf, meIn, orNotFound, Refused, signedIn } from './door.ts'

const Password = z.strictObject({ password: z.string() })

/** Who is signed in; proving it again; signing out everywhere. */
export function meRoutes(api: Hono, doors: Doors): void {
  const { prisma, reading, sessions, signIn } = doors

  api.get('/me', async (context) => context.json(await meIn(context, doors)))

  api.post('/prove', async (context) => {
    const session = await signedIn(context, sessions)
    const { password } = await bodyOf(context, Password)
    const proved = await signIn.prove(session, password, addressOf(context))
    if (proved === null) throw new Refused(403, 'password', 'That is not your password.')
    context.header('set-cookie', await sessions.cookieFor(proved))
    return context.json(orNotFound(await meOf(prisma, reading, proved)))
  })

  api.post('/sign-out-everywhere', async (context) => {
    const session = await signedIn(context, sessions)
    await sessions.end(session.person)
    context.header('set-cookie', sessions.noCookie())
    return context.json({})
  })
}
