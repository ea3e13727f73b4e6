import type { IncomingMessage, ServerResponse } from 'node:http'
import { fileURLToPath } from 'node:url'
import sirv from 'sirv'
import type { Env } from '../env.ts'

/** Where the build's scripts, styles and faces are asked for. */
const AT = '/_next/static'
/** Their names hold their hash: what was fetched once need never be asked for again. In seconds. */
const YEAR_SECONDS = 31_536_000

/** Answers a request itself, or calls `next`. */
export type Passing = (request: IncomingMessage, response: ServerResponse, next: () => void) => void

/** Serves scripts, styles and faces as they were pressed when they were built (lib/bin/finish-build.ts), once for all readers. */
export function staticFiles({ mode }: Env): Passing {
  // In development they change, and Next has them in memory.
  if (mode === 'development') return (_request, _response, next) => next()
  const folder = fileURLToPath(new URL('../../../.next/static', import.meta.url))
  const serve = sirv(folder, {
    brotli: true,
    gzip: true,
    etag: true,
    maxAge: YEAR_SECONDS,
    immutable: true,
  })
  return (request, response, next) => {
    const asked = request.url ?? ''
    if (!asked.startsWith(`${AT}/`)) return next()
    request.url = asked.slice(AT.length)
    serve(request, response, () => {
      request.url = asked
      next()
    })
  }
}
