import type { IncomingMessage } from 'node:http'
import type { Env } from '../env.ts'

/** Carries the sender's address to the API and to sign-in. */
export const ADDRESS_HEADER = 'x-fettleyard-address'

/**
 * Puts the sender's network address on a request, over whatever the sender wrote there. Behind PUBLIC_URL's own proxy it is
 * the last address that the proxy added.
 */
export function stampAddress(request: IncomingMessage, { publicUrl }: Env): void {
  const direct = request.socket.remoteAddress ?? 'unknown'
  const forwarded = request.headers['x-forwarded-for']
  const last = (typeof forwarded === 'string' ? forwarded : '').split(',').at(-1)?.trim()
  request.headers[ADDRESS_HEADER] = publicUrl === undefined || !last ? direct : last
}
