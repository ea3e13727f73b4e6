import type { Server as HttpServer } from 'node:http'
import { Server } from 'socket.io'
import type { OwnOrigin } from './origin.ts'

/** The one io server of this process. */
export type Io = Server

/** Where sockets connect; `main.ts` leaves upgrades of this path alone. */
export const SOCKET_PATH = '/socket.io'

/** Puts sockets on our port: websocket only, from our own pages only. Sign-in is `io.use(…)` of the live part. */
export function openSockets(http: HttpServer, isOwnOrigin: OwnOrigin): Io {
  return new Server(http, {
    path: SOCKET_PATH,
    transports: ['websocket'],
    serveClient: false,
    // Next's own upgrades share the server: `main.ts` ends those that are nobody's.
    destroyUpgrade: false,
    allowRequest: (request, answer) => answer(null, isOwnOrigin(request.headers.origin)),
  })
}
