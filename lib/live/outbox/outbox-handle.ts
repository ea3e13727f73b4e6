import type { Live } from '../live.ts'
import { emptyView, type OutboxView } from './outbox-view.ts'
import type { TabOutbox } from './tab-outbox.ts'

/** A tab's way to its queue, which is loaded after the first paint. */
export interface OutboxHandle {
  /** The queue; null where the browser keeps nothing, or can't fetch it now: presses then go as they are made, or not at all. */
  readonly load: () => Promise<TabOutbox | null>
  readonly view: () => OutboxView
  readonly subscribe: (listener: () => void) => () => void
  readonly close: () => void
}

/** The way to a queue that isn't loaded yet. */
export function openOutboxHandle(live: () => Live): OutboxHandle {
  const listeners = new Set<() => void>()
  let loading: Promise<TabOutbox | null> | undefined
  let opened = 0
  let outbox: TabOutbox | null = null
  const tell = () => {
    for (const listener of listeners) listener()
  }
  async function open(): Promise<TabOutbox | null> {
    opened += 1
    const turn = opened
    try {
      const { openTabOutbox } = await import('./tab-outbox.ts')
      const made = await openTabOutbox(live())
      if (turn !== opened) {
        made.close()
        return null
      }
      outbox = made
      outbox.subscribe(tell)
      tell()
      return outbox
    } catch {
      loading = undefined
      return null
    }
  }
  return {
    load() {
      loading ??= open()
      return loading
    },
    view: () => outbox?.view() ?? emptyView,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    close() {
      opened += 1
      outbox?.close()
      outbox = null
      loading = undefined
    },
  }
}
