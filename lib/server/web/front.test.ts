import { once } from 'node:events'
import { connect, type Socket } from 'node:net'
import { afterEach, describe, expect, it } from 'vitest'
import { readEnv } from '../env.ts'
import { type Front, openFront } from './front.ts'

const opened: Socket[] = []
const HEAD =
  'GET /socket.io/ HTTP/1.1\r\nHost: yard\r\nConnection: Upgrade\r\nUpgrade: websocket\r\n\r\n'

/** A phone that wants its socket. */
async function aSocket({ port }: Front): Promise<Socket> {
  const socket = connect(port, '127.0.0.1')
  opened.push(socket)
  await once(socket, 'connect')
  socket.write(HEAD)
  return socket
}
const aFront = (): Promise<Front> => openFront({ ...readEnv({}), port: 0 })

describe('the port', () => {
  afterEach(() => {
    for (const socket of opened.splice(0)) socket.destroy()
  })

  it('turns a socket away while the server starts: the phone tries again, and nothing holds up a stop', async () => {
    const front = await aFront()
    const early = await aSocket(front)
    await once(early, 'close')
    await front.close()
  })

  it('keeps a socket once the server answers', async () => {
    const front = await aFront()
    front.answerWith((_request, response) => response.end())
    front.http.on('upgrade', (_request, socket) => {
      socket.write('taken')
      socket.end()
    })
    const socket = await aSocket(front)
    const [said] = await once(socket, 'data')
    expect(String(said)).toBe('taken')
    await front.close()
  })
})
