import type { MiddlewareHandler } from 'hono'
import type { OwnOrigin } from '../web/origin.ts'

const READS = new Set(['GET', 'HEAD'])
const BODIES = new Set(['application/json', 'application/offset+octet-stream'])
/** Files go by PUT as they are: a form of another site can't send these with PUT. */
const FILES = /^(image\/[\w.+-]+|application\/pdf)$/

/**
 * Lets a change in only from our own pages, as JSON (uploads: tus's type), so that no other site can press for a person who is
 * signed in. A request by token carries no cookie and needs no Origin.
 */
export function guard(isOwnOrigin: OwnOrigin): MiddlewareHandler {
  return async (context, next) => {
    const { method } = context.req
    if (READS.has(method)) return next()
    const byToken = context.req.header('authorization') !== undefined
    if (
      byToken
        ? context.req.header('cookie') !== undefined
        : !isOwnOrigin(context.req.header('origin'))
    ) {
      return context.json(
        { error: { field: 'origin', message: 'Send this from a page of ours.' } },
        403,
      )
    }
    const type = context.req.header('content-type')?.split(';')[0]?.trim().toLowerCase()
    // An upload begins without a body; no form of another site can send its header.
    const begins = type === undefined && context.req.header('tus-resumable') !== undefined
    const sent = begins || BODIES.has(type ?? '') || (method === 'PUT' && FILES.test(type ?? ''))
    if (method !== 'DELETE' && !sent) {
      const message = 'Send the body as application/json.'
      return context.json({ error: { field: 'content-type', message } }, 415)
    }
    return next()
  }
}
