import { once } from 'node:events'
import { connect } from 'node:net'

/** A kept-alive connection with one request under way: a client that costs little beside what it measures. */
export type Connection = {
  /** Posts JSON; answers status and body. */
  readonly post: (
    head: string,
    body: string,
  ) => Promise<{ readonly status: number; readonly body: string }>
  readonly close: () => void
}

const END = '\r\n\r\n'

/** Connects to a port of this machine. */
export async function openConnection(port: number): Promise<Connection> {
  const socket = connect(port, '127.0.0.1')
  socket.setNoDelay(true)
  await once(socket, 'connect')
  let heard = ''
  let waiting: ((answer: { status: number; body: string }) => void) | undefined
  let failed: ((error: Error) => void) | undefined
  socket.setEncoding('latin1')
  socket.on('data', (text) => {
    heard += text
    const answer = read(heard)
    if (answer === undefined) return
    heard = ''
    waiting?.(answer)
  })
  socket.on('error', (error) => failed?.(error))
  socket.on('close', () => failed?.(new Error('The server closed the connection.')))
  return {
    post: (head, body) =>
      new Promise((resolve, reject) => {
        waiting = resolve
        failed = reject
        const length = Buffer.byteLength(body)
        socket.write(`${head}content-length: ${length}${END}${body}`)
      }),
    close() {
      failed = undefined
      socket.destroy()
    },
  }
}

/** The head of a request, but for its length. */
export const postHead = (path: string, headers: Readonly<Record<string, string>>): string =>
  [
    `POST ${path} HTTP/1.1`,
    'host: 127.0.0.1',
    'content-type: application/json',
    ...Object.entries(headers).map(([name, value]) => `${name}: ${value}`),
    '',
  ].join('\r\n')

/** The answer, once all of it is there. */
function read(heard: string): { readonly status: number; readonly body: string } | undefined {
  const end = heard.indexOf(END)
  if (end === -1) return undefined
  const head = heard.slice(0, end).toLowerCase()
  const body = heard.slice(end + END.length)
  const status = Number(head.slice(9, 12))
  const length = /content-length: (\d+)/.exec(head)?.[1]
  if (length !== undefined) return body.length < Number(length) ? undefined : { status, body }
  return body.endsWith(`0${END}`) ? { status, body } : undefined
}
