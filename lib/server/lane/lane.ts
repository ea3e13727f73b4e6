/** Work of one record, one piece after another. */
export interface Lanes<Id extends string, Ticket> {
  /** Runs `work` alone among all that goes on in this lane. */
  readonly hold: <T>(lane: Id, work: () => Promise<T>) => Promise<T>
  /** Runs `work` alone in several lanes, taken in id order, so that no two ever wait for each other. */
  readonly holdAll: <T>(lanes: readonly Id[], work: () => Promise<T>) => Promise<T>
  /** Puts a ticket in the lane's queue; tickets that wait while others are at work come to `serve` together, in order. */
  readonly submit: (lane: Id, ticket: Ticket) => void
}

/** Most tickets that `serve` gets at once: their save is one message and one answer. */
const MOST_AT_ONCE = 100

/** Lanes whose tickets `serve` deals with; it must not throw. */
export function openLanes<Id extends string, Ticket>(
  serve: (lane: Id, tickets: readonly Ticket[]) => Promise<void>,
): Lanes<Id, Ticket> {
  const ends = new Map<Id, Promise<unknown>>()
  const queues = new Map<Id, Ticket[]>()

  function hold<T>(lane: Id, work: () => Promise<T>): Promise<T> {
    const before = ends.get(lane) ?? Promise.resolve()
    const mine = before.then(work)
    const end = mine.catch(() => {})
    ends.set(lane, end)
    void end.then(() => {
      if (ends.get(lane) === end) ends.delete(lane)
    })
    return mine
  }

  async function serveQueue(lane: Id): Promise<void> {
    const queue = queues.get(lane) ?? []
    await serve(lane, queue.splice(0, MOST_AT_ONCE))
    // Whoever waits to hold the lane gets a turn before the rest of the queue.
    if (queue.length > 0) void hold(lane, () => serveQueue(lane))
    else queues.delete(lane)
  }

  return {
    hold,
    holdAll(lanes, work) {
      const inOrder = [...new Set(lanes)].sort()
      return inOrder.reduceRight<typeof work>((inner, lane) => () => hold(lane, inner), work)()
    },
    submit(lane, ticket) {
      const queue = queues.get(lane)
      if (queue !== undefined) {
        queue.push(ticket)
        return
      }
      queues.set(lane, [ticket])
      void hold(lane, () => serveQueue(lane))
    },
  }
}
