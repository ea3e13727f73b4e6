import type { Context, Hono } from 'hono'
import * as z from 'zod/mini'
import type { Actor, View } from '../../record/actor.ts'
import type { Condition } from '../../record/condition.ts'
import type { ProjectRecord } from '../../record/project-record.ts'
import { Instant, Sha256 } from '../../record/scalars.ts'
import { seeConditions } from '../../see/see-conditions.ts'
import { sentence } from '../../words/sentence.ts'
import type { Doors } from '../doors.ts'
import { isProject } from '../load.ts'
import { addressOf, answerableIn, checked, orNotFound } from './door.ts'
import { bytesOf, kept, lengthOf } from './kept.ts'
import { shown } from './shown.ts'
import { beginUpload, goOnWithUpload } from './upload.ts'

const Said = z.record(z.string(), z.json())

/** Receiving a handover by its link, without an account. */
export function receiptRoutes(api: Hono, doors: Doors): void {
  const { receipts, files, uploads, limits } = doors

  api.post('/handovers/:id/link', async (context) => {
    const who = await answerableIn(context, doors)
    await limits.link(who.person)
    return context.json(orNotFound(await receipts.link(who, context.req.param('id'))))
  })

  api.get('/receipts/:token', async (context) =>
    context.json(orNotFound(await receipts.read(context.req.param('token')))),
  )

  api.post('/receipts/:token', async (context) => {
    await limits.token(addressOf(context))
    const said = checked(await context.req.json().catch(() => null), Said)
    const token = context.req.param('token')
    const outcome = orNotFound(await receipts.receive(token, said))
    if (outcome.is === 'done') return context.json(orNotFound(await receipts.read(token)))
    if (outcome.is === 'invalid')
      return context.json({ issues: outcome.issues, message: 'Something is missing.' }, 400)
    if (outcome.is === 'refused' && isProject(outcome.record))
      return context.json(refusalOf(outcome.record, outcome.actor, outcome.conditions), 409)
    return context.json({ message: 'It could not be received just now. Nothing was changed.' }, 503)
  })

  api.get('/receipts/:token/files/:sha256', async (context) => {
    const sha256 = checked(context.req.param('sha256'), Sha256)
    return shown(orNotFound(await receipts.readFile(context.req.param('token'), sha256)))
  })

  /** Where this guest's photos go; a token that opens nothing counts as a try. */
  async function keeping(context: Context) {
    const token = context.req.param('token') ?? ''
    const keep = await receipts.keeping(token)
    if (keep === null) await limits.token(addressOf(context))
    const { link, project, by } = orNotFound(keep)
    return { project, by, sender: link, address: `/api/receipts/${token}/uploads` }
  }
  const count = (link: string, bytes: number) => limits.bytes('guest', link, bytes)

  api.put('/receipts/:token/files/:sha256', async (context) => {
    const { project, by, sender } = await keeping(context)
    const sha256 = checked(context.req.param('sha256'), Sha256)
    await count(sender, lengthOf(context))
    return kept(context, await files.keep(project, sha256, bytesOf(context), by))
  })

  api.post('/receipts/:token/uploads', async (context) => {
    const upload = await keeping(context)
    return beginUpload(context, uploads, upload, {
      isKept: async (sha256) => (await files.read(upload.project, sha256))?.by === upload.by,
      count: (bytes) => count(upload.sender, bytes),
    })
  })

  // HEAD comes by the door of GET.
  api.on(['GET', 'PATCH', 'DELETE'], '/receipts/:token/uploads/:upload', async (context) =>
    goOnWithUpload(context, uploads, await keeping(context)),
  )
}

/** Why not, as a guest may know it, in words. */
function refusalOf(record: ProjectRecord, { party, person }: Actor, all: readonly Condition[]) {
  const view: View | null = party === null ? null : { party, role: 'guest' }
  const project = record.projects.rows.get(record.id)
  if (view === null || project === undefined) return { conditions: [], message: '' }
  const conditions = seeConditions(view, record, all)
  const { timeZone, currency } = project
  const now = Instant.parse(new Date().toISOString())
  const reader = { view, person, people: {}, locale: 'en-GB', timeZone, currency, now }
  const message = conditions.map((condition) => sentence(condition, record, reader).fact).join('. ')
  return { conditions, message: `${message}.` }
}
