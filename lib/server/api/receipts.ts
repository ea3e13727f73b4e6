import type { Hono } from 'hono'
import * as z from 'zod/mini'
import { Sha256 } from '../../record/scalars.ts'
import type { Doors } from '../doors.ts'
import { addressOf, checked, orNotFound, signedIn } from './door.ts'
import { kept } from './kept.ts'

const Said = z.record(z.string(), z.json())

/** Receiving a handover by its link, without an account. */
export function receiptRoutes(api: Hono, { receipts, sessions, limits }: Doors): void {
  api.post('/handovers/:id/link', async (context) => {
    const session = await signedIn(context, sessions)
    return context.json(orNotFound(await receipts.link(session, context.req.param('id'))))
  })

  api.get('/receipts/:token', async (context) =>
    context.json(orNotFound(await receipts.read(context.req.param('token')))),
  )

  api.post('/receipts/:token', async (context) => {
    await limits.link(addressOf(context))
    const said = checked(await context.req.json().catch(() => null), Said)
    const token = context.req.param('token')
    const outcome = orNotFound(await receipts.receive(token, said))
    if (outcome.is === 'done') return context.json(orNotFound(await receipts.read(token)))
    if (outcome.is === 'invalid')
      return context.json({ issues: outcome.issues, message: 'Something is missing.' }, 400)
    if (outcome.is === 'refused') {
      const message = 'It could not be received as it stands.'
      return context.json({ conditions: outcome.conditions, message }, 409)
    }
    return context.json({ message: 'It could not be received just now. Nothing was changed.' }, 503)
  })

  api.put('/receipts/:token/files/:sha256', async (context) => {
    await limits.link(addressOf(context))
    const sha256 = checked(context.req.param('sha256'), Sha256)
    const keep = receipts.keepFile(context.req.param('token'), sha256, bytesOf(context.req.raw))
    return kept(context, orNotFound(await keep).fault)
  })
}

const bytesOf = ({ body }: Request): ReadableStream<Uint8Array> => body ?? new ReadableStream()
