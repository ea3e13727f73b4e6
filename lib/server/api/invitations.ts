import type { Hono } from 'hono'
import * as z from 'zod/mini'
import { Instant } from '../../record/scalars.ts'
import type { Doors } from '../doors.ts'
import { Email } from '../installation/installation.ts'
import type { Jobs } from '../jobs.ts'
import { accountByEmail } from '../people/accounts.ts'
import { InviteInput } from '../people/invitations.ts'
import { mailJob } from '../people/mails.ts'
import { meOf } from '../people/me.ts'
import { passwordFault } from '../people/password.ts'
import { sessionOf } from '../people/sign-in.ts'
import { addressOf, bodyOf, checked, orNotFound, Refused, signedIn } from './door.ts'
import { refusedBy } from './not-done.ts'

const Password = z.strictObject({ password: z.string() })
const MagicLink = z.object({ email: Email, next: z.optional(z.string()) })

/** Letting people in, and coming in by a link. */
export function invitationRoutes(api: Hono, doors: Doors): void {
  const { prisma, limits, invitations, sessions, reading, jobs } = doors

  api.post('/invitations', async (context) => {
    const session = await signedIn(context, sessions)
    const input = checked(await context.req.json().catch(() => null), InviteInput)
    await limits.link(session.person)
    const invited = await invitations.invite(session, input)
    if (invited.is === 'invited') return context.json(invited.link)
    if (invited.is === 'not done') throw refusedBy(invited.outcome)
    throw new Refused(
      409,
      'email',
      'This address waits for another invitation. They open that one first; then invite them again.',
    )
  })

  api.get('/join/:token', async (context) =>
    context.json(orNotFound(await invitations.read(context.req.param('token')))),
  )

  api.post('/join/:token', async (context) => {
    const { password } = await bodyOf(context, Password)
    await limits.token(addressOf(context))
    const fault = passwordFault(password)
    if (fault !== null) throw new Refused(400, 'password', fault)
    const taken = await invitations.take(context.req.param('token'), password, addressOf(context))
    if (taken === 'no link')
      throw new Refused(
        404,
        '',
        'This invitation was used, or its time is over. Ask for a new one.',
      )
    if (taken === 'wrong password')
      throw new Refused(
        403,
        'password',
        'This address has an account already; that is not its password.',
      )
    const session = sessionOf(taken.id, 'password')
    context.header('set-cookie', await sessions.cookieFor(session))
    return context.json(orNotFound(await meOf(prisma, reading, session)))
  })

  api.post('/magic-link', async (context) => {
    const { email, next } = await bodyOf(context, MagicLink)
    if (jobs === null)
      throw new Refused(
        409,
        'email',
        'No mail is sent from here. Ask whoever invited you for a link.',
      )
    await limits.token(addressOf(context))
    await limits.link(email)
    // Not waited for: an address without an account gets the same answer after the same time.
    void askForLink(jobs, email, next).catch((error: unknown) =>
      console.error('fettleyard: a sign-in link could not be made:', error),
    )
    return context.json({})
  })

  async function askForLink(by: Jobs, email: string, next: string | undefined): Promise<void> {
    const account = await accountByEmail(prisma, email)
    if (account === null || account.demo) return
    const askedAt = Instant.parse(new Date().toISOString())
    const mail = { type: 'sign-in', person: account.id, next: next ?? null, askedAt } as const
    await by.add(mailJob(mail))
  }
}
