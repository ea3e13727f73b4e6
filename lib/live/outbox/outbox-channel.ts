import type { Outcome } from '../http.ts'

/** What tabs and the service worker tell each other of the queue. */
export type OutboxNews =
  | { readonly is: 'answered'; readonly place: number; readonly outcome: Outcome }
  /** Something was put in, dropped, or is to be sent again. */
  | { readonly is: 'changed' }

/** The way from one tab to the others, and to itself never. */
export interface OutboxChannel {
  readonly say: (news: OutboxNews) => void
  readonly hear: (listener: (news: OutboxNews) => void) => void
  readonly close: () => void
}

/** A channel between all that runs of this origin in this browser. */
export function outboxChannel(): OutboxChannel {
  const channel = new BroadcastChannel('fettleyard outbox')
  return {
    say: (news) => channel.postMessage(news),
    hear(listener) {
      channel.addEventListener('message', ({ data }: MessageEvent<OutboxNews>) => listener(data))
    },
    close: () => channel.close(),
  }
}
