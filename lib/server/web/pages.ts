import { createServer, type RequestListener } from 'node:http'
import { fileURLToPath } from 'node:url'
import type { Env } from '../env.ts'
import { SOCKET_PATH } from '../live/sockets.ts'
import type { Front } from './front.ts'

/** Next, which has the pages and sign-in. */
export type Pages = {
  readonly answer: RequestListener
  close(): Promise<void>
}

/** Starts Next beside the API and the sockets, on the same port. */
export async function openPages({ mode, host }: Env, { http, port }: Front): Promise<Pages> {
  // Next and React choose their build by this variable, when they are loaded.
  Object.assign(process.env, { NODE_ENV: mode, NEXT_TELEMETRY_DISABLED: '1' })
  const { default: next } = await import('next')
  // Next hangs its own upgrade listener on the server it is given, and ends upgrades that it doesn't know; so it gets one
  // that never listens, and hears only of its own.
  const inner = createServer()
  const app = next({
    dev: mode === 'development',
    dir: fileURLToPath(new URL('../../../', import.meta.url)),
    hostname: host,
    port,
    httpServer: inner,
  })
  await app.prepare()
  http.on('upgrade', (request, socket, head) => {
    const path = request.url ?? ''
    if (path.startsWith(`${SOCKET_PATH}/`)) return
    if (path.startsWith('/_next/')) inner.emit('upgrade', request, socket, head)
    else socket.destroy()
  })
  const handle = app.getRequestHandler()
  return {
    answer: (request, response) => void handle(request, response),
    close: () => app.close(),
  }
}
