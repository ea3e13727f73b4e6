/** How this phone hangs on the server: not yet, by the socket, or not at all since then. */
export type Link = 'starting' | 'live' | 'away'

/** Whether changes arrive, and the server's clock. */
export interface Connection {
  readonly link: () => Link
  /** Until when all that happened is known, in ms of the server's clock; while live that is now. */
  readonly knownUntilMs: () => number
  readonly say: (link: Link) => void
  readonly subscribe: (listener: () => void) => () => void
  /** The server's clock, in ms: this phone's, put right by the last answer. */
  readonly nowMs: () => number
  readonly setClock: (serverNow: string) => void
  /**
   * Takes a time that came with a page. It may have lain about for minutes before it was looked at: then it is older than what
   * is known, and puts nothing back.
   */
  readonly seedClock: (serverNow: string) => void
  /**
   * Begins without a network, from what the phone kept: all is known until then, and the server's clock was ahead by so many ms. Does
   * nothing once there was an answer.
   */
  readonly recall: (knownUntil: string, clockAhead: number) => void
}

/** A connection that has not begun. */
export function openConnection(): Connection {
  let link: Link = 'starting'
  let ahead = 0
  let isSet = false
  let known = Date.now()
  const nowMs = () => Date.now() + ahead
  const listeners = new Set<() => void>()
  return {
    link: () => link,
    knownUntilMs: () => (link === 'live' ? nowMs() : known + ahead),
    say(next) {
      if (next === link) return
      if (link === 'live') known = Date.now()
      link = next
      for (const listener of listeners) listener()
    },
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    nowMs,
    setClock(serverNow) {
      ahead = Date.parse(serverNow) - Date.now()
      isSet = true
    },
    seedClock(serverNow) {
      const seen = Date.parse(serverNow) - Date.now()
      ahead = isSet ? Math.max(ahead, seen) : seen
      isSet = true
    },
    recall(knownUntil, clockAhead) {
      if (link !== 'starting') return
      if (!isSet) ahead = clockAhead
      known = Date.parse(knownUntil) - ahead
      link = 'away'
      for (const listener of listeners) listener()
    },
  }
}
