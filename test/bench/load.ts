import { type Connection, openConnection } from './http-client.ts'

/** One press after another, as a client would send them. */
export type NextRequest = () => { readonly head: string; readonly body: string }

/** Sends one request and expects it to be carried out. @throws with the answer where it isn't */
async function send(connection: Connection, next: NextRequest): Promise<void> {
  const { head, body } = next()
  const answer = await connection.post(head, body)
  if (answer.status !== 200) throw new Error(`${answer.status}: ${answer.body.slice(0, 500)}`)
}

async function withConnections<T>(
  port: number,
  count: number,
  work: (connections: readonly Connection[]) => Promise<T>,
): Promise<T> {
  const connections = await Promise.all(Array.from({ length: count }, () => openConnection(port)))
  try {
    return await work(connections)
  } finally {
    for (const { close } of connections) close()
  }
}

/** Requests a second that so many clients get through who each wait for their answer. */
export const throughput = (
  port: number,
  clients: number,
  next: NextRequest,
  ms: number,
): Promise<number> =>
  withConnections(port, clients, async (connections) => {
    const until = performance.now() + ms
    let sent = 0
    await Promise.all(
      connections.map(async (connection) => {
        while (performance.now() < until) {
          await send(connection, next)
          sent++
        }
      }),
    )
    return (sent / ms) * 1000
  })

/**
 * How long each request took, in ms, when they come at `perSecond` whether or not the ones before are answered; counted from
 * when it should have been sent, so that a standstill shows in all who would have waited.
 */
export const latencies = (
  port: number,
  perSecond: number,
  next: NextRequest,
  ms: number,
): Promise<number[]> =>
  withConnections(port, 128, async (connections) => {
    const free = [...connections]
    const due: number[] = []
    const took: number[] = []
    const underWay = new Set<Promise<void>>()
    const began = performance.now()
    let planned = 0
    const dispatch = () => {
      while (due.length > 0 && free.length > 0) {
        const at = due.shift() ?? 0
        const connection = free.pop()
        if (connection === undefined) return
        const one = send(connection, next).then(() => {
          took.push(performance.now() - at)
          free.push(connection)
          underWay.delete(one)
          dispatch()
        })
        underWay.add(one)
      }
    }
    while (performance.now() - began < ms) {
      const now = performance.now()
      for (; began + (planned * 1000) / perSecond <= now; planned++) {
        due.push(began + (planned * 1000) / perSecond)
      }
      dispatch()
      await new Promise((resolve) => setTimeout(resolve, 1))
    }
    while (underWay.size > 0) await Promise.all(underWay)
    return took
  })
