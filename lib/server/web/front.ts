import { createServer, type RequestListener, type Server } from 'node:http'
import type { Duplex } from 'node:stream'
import { setTimeout as sleep } from 'node:timers/promises'
import type { Env } from '../env.ts'
import { Stop } from '../stop.ts'

/** Requests in flight, and sockets that are being closed, get this long to finish at a stop, in ms. */
const FINISH_MS = 10_000

/** Our one port: it listens from the first moment, so that a taken port is told before anything is touched. */
export type Front = {
  readonly http: Server
  /** The port in use, also where any was asked for. */
  readonly port: number
  /** From now on `listener` answers; until then everybody hears that we are starting, and sockets are turned away. */
  answerWith(listener: RequestListener): void
  /** Takes no more, finishes what is in flight, then frees the port. */
  close(): Promise<void>
}

/**
 * Opens the port.
 * @throws {Stop} when it can't be had
 */
export async function openFront({ host, port }: Env): Promise<Front> {
  let answer: RequestListener = (_request, response) => {
    response.writeHead(503, { 'content-type': 'application/json', 'retry-after': '1' })
    response.end('{"status":"starting"}')
  }
  let answers = false
  const http = createServer((request, response) => answer(request, response))
  // A close waits for every socket, also for those that Next's reload keeps open in each page.
  const sockets: Sockets = { reloads: new Set(), all: new Set() }
  http.on('upgrade', (request, socket) => {
    // Nobody is there yet to take it: left alone it would hang, the phone with it, and a stop would wait for it.
    if (!answers) {
      socket.destroy()
      return
    }
    sockets.all.add(socket)
    if (request.url?.startsWith('/_next/')) sockets.reloads.add(socket)
    socket.once('close', () => {
      sockets.all.delete(socket)
      sockets.reloads.delete(socket)
    })
  })
  await listen(http, host, port)
  const address = http.address()
  return {
    http,
    port: typeof address === 'object' && address !== null ? address.port : port,
    answerWith: (listener) => {
      answer = listener
      answers = true
    },
    close: () => close(http, sockets),
  }
}

function listen(http: Server, host: string, port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    http.once('error', (error: NodeJS.ErrnoException) =>
      reject(new Stop(because(error, host, port))),
    )
    http.listen(port, host, resolve)
  })
}

function because(error: NodeJS.ErrnoException, host: string, port: number): string {
  if (error.code === 'EADDRINUSE') {
    return `Port ${port} is in use by another program. Stop it, or set PORT to another port, such as PORT=${port + 1}.`
  }
  if (error.code === 'EACCES') {
    return `PORT ${port} needs rights that this user lacks. Set PORT to one above 1023.`
  }
  return `HOST ${host} with PORT ${port} can't be listened on (${error.message}). Set HOST to an address of this machine.`
}

/** What has left HTTP for a socket. */
interface Sockets {
  readonly reloads: Set<Duplex>
  readonly all: Set<Duplex>
}

async function close(http: Server, { reloads, all }: Sockets): Promise<void> {
  if (!http.listening) return
  const closed = new Promise<void>((resolve) => http.close(() => resolve()))
  for (const socket of reloads) socket.destroy()
  const late = new AbortController()
  const force = sleep(FINISH_MS, undefined, { signal: late.signal })
    .then(() => {
      http.closeAllConnections()
      for (const socket of all) socket.destroy()
    })
    .catch(() => {})
  await closed
  late.abort()
  await force
}
