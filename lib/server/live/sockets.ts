import type { Server as HttpServer } from 'node:http'
import { type DefaultEventsMap, Server, type Socket } from 'socket.io'
import type { ClientEvents, ServerEvents } from '../../command/wire.ts'
import type { OnPhone } from '../people/looker.ts'
import type { Session } from '../people/session.ts'
import type { OwnOrigin } from '../web/origin.ts'
import type { Watched } from './rooms.ts'

/** What the server keeps with a socket. */
export type SocketData = {
  session: Session | OnPhone
  /** What it follows, by record. */
  watching: Map<string, Watched>
  /** What its person was let into when that was last looked at. */
  grants: readonly string[]
}

/** The one io server of this process. */
export type Io = Server<ClientEvents, ServerEvents, DefaultEventsMap, SocketData>
/** One phone’s socket. */
export type IoSocket = Socket<ClientEvents, ServerEvents, DefaultEventsMap, SocketData>

/** Where sockets connect; `main.ts` leaves upgrades of this path alone. */
export const SOCKET_PATH = '/socket.io'

/** Puts sockets on our port: websocket only, from our own pages only. Who may connect and follow what: `follow.ts`. */
export function openSockets(http: HttpServer, isOwnOrigin: OwnOrigin): Io {
  return new Server(http, {
    path: SOCKET_PATH,
    transports: ['websocket'],
    serveClient: false,
    // A phone that lost its network is noticed within this many ms, twice.
    pingInterval: 10_000,
    pingTimeout: 10_000,
    maxHttpBufferSize: 10_000,
    // Next's own upgrades share the server: `main.ts` ends those that are nobody's.
    destroyUpgrade: false,
    allowRequest: (request, answer) => answer(null, isOwnOrigin(request.headers.origin)),
  })
}
