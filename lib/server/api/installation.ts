import type { Hono } from 'hono'
import type { Doors } from '../doors.ts'
import { FirstShopInput, setUp } from '../installation/installation.ts'
import { meOf } from '../people/me.ts'
import { passwordFault } from '../people/password.ts'
import { sessionOf } from '../people/sign-in.ts'
import { bodyOf, meIn, orNotFound, Refused } from './door.ts'
import { refusedBy } from './not-done.ts'

/** The first visit: a shop of one's own, or the demonstration; and the end of the demonstration. */
export function installationRoutes(api: Hono, doors: Doors): void {
  const { prisma, commands, sessions, reading, demonstration, demoDoors } = doors

  api.get('/installation', async (context) => {
    return context.json(await doors.installation())
  })

  api.post('/installation/shop', async (context) => {
    const input = await bodyOf(context, FirstShopInput)
    const fault = passwordFault(input.password)
    if (fault !== null) throw new Refused(400, 'password', fault)
    const made = await setUp(doors, commands.enter, input)
    if (made === null)
      throw new Refused(409, '', 'It is set up already. Sign in, or ask for an invitation.')
    if (made.outcome.is !== 'done') throw refusedBy(made.outcome)
    const session = sessionOf(made.account.id, 'password')
    context.header('set-cookie', await sessions.cookieFor(session))
    return context.json(orNotFound(await meOf(prisma, reading, session)))
  })

  api.get('/installation/demo', async (context) => context.json(await demonstration.progress()))

  api.post('/installation/demo', async (context) => {
    if (!demoDoors) throw new Refused(403, '', 'The demonstration is for this machine only.')
    if (!(await demonstration.load()))
      throw new Refused(
        409,
        '',
        'Something exists here already. The demonstration needs an empty installation.',
      )
    return context.json(await demonstration.progress(), 202)
  })

  api.post('/installation/remove-demo', async (context) => {
    const me = await meIn(context, doors)
    if (!demoDoors || !me.demo || me.device !== null)
      throw new Refused(403, '', 'Only a person of the demonstration can end it.')
    if (!(await demonstration.remove()))
      throw new Refused(
        409,
        '',
        'There is more here than the demonstration: a shop or a car of your own. Nothing was removed.',
      )
    context.header('set-cookie', sessions.noCookie())
    return context.json({})
  })
}
