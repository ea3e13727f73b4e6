import type { Changed } from '../../command/wire.ts'
import type { Here, Outcome } from '../http.ts'
import type { Unsent } from '../phone/phone-store.ts'
import type { ProjectState } from '../project-state.ts'
import type { ShopState } from '../shop-state.ts'
import type { OutboxChannel } from './outbox-channel.ts'
import { asItIs, emptyView, type OutboxView, remembered } from './outbox-view.ts'
import type { Overlaid, Pressed } from './overlay.ts'
import { type Sending, sendUnsent } from './send-unsent.ts'
import { type Sender, senderOf } from './sender-of.ts'
import type { Queued } from './unsent-store.ts'

/** An answer, or that the press is safe on this phone and goes when there is signal. */
export type PressOutcome = Outcome | { readonly status: 'kept' }

/** A press that is in the queue, and what comes of it. */
export interface Sent {
  readonly place: number
  readonly outcome: Promise<PressOutcome>
}

/** The queue of one tab. */
export interface Outbox {
  readonly view: () => OutboxView
  readonly subscribe: (listener: () => void) => () => void
  /** Lays what waits over the records anew, and tells whoever listens. */
  readonly show: () => void
  /** Keeps a press, then sends it. @throws where the phone has no room for it */
  readonly press: (item: Unsent) => Promise<Sent>
  /** Sends a refused one again, with what was changed in it; `again` is what it is now. */
  readonly sendAgain: (again: Queued) => Promise<Sent>
  /** Takes one out; what the server carried out meanwhile stays done. */
  readonly drop: (place: number) => Promise<void>
  /** Puts one back that was dropped. */
  readonly restore: (item: Queued) => Promise<void>
  /** Sends what waits, now: there is signal again, or somebody has signed in. */
  readonly wake: () => void
  /** Sends what waits, and tells when that has come to an end. */
  readonly flush: () => Promise<void>
  readonly close: () => void
}

/** What a queue needs of its tab. */
export interface OutboxParts extends Omit<Sending, 'answered'> {
  readonly channel: OutboxChannel
  readonly here: () => Promise<Here>
  readonly take: (changed: Changed) => void
  /** Whether it is known that there is no signal. */
  readonly isAway: () => boolean
  /** Who was here last, beyond this visit. */
  readonly lastHere: {
    readonly get: () => Sender | null
    readonly set: (sender: Sender) => void
  }
  /** Asks the browser to call the service worker when there is signal. */
  readonly askToBeCalled: () => void
  readonly overlay: {
    readonly project: (base: ProjectState, pressed: readonly Pressed[]) => Overlaid<ProjectState>
    readonly shop: (base: ShopState, pressed: readonly Pressed[]) => Overlaid<ShopState>
  }
  /** 0 to 1, so that phones that lost the same server don't all come back at once. */
  readonly chance: () => number
}

/** Sooner than that most answers are here, and the screen needn't show what isn't sent; in ms. */
const SHOWN_AFTER_MS = 250
/** Nobody waits longer at a press: it is kept, and goes on by itself; in ms. */
const KEPT_AFTER_MS = 4000
/** Where the server doesn't answer: tried again after so long, doubled each time up to the most; in ms. */
const FIRST_RETRY_MS = 1000
const LAST_RETRY_MS = 60_000
/** Tabs hear of each other sooner than that; in ms. */
const NEWS_WITHIN_MS = 500
/** By then the record has what was answered, or somebody may no longer see it; in ms. */
const SETTLED_MS = 10_000

/** Opens the queue of this tab. */
export function openOutbox(parts: OutboxParts): Outbox {
  const { store, channel } = parts
  const listeners = new Set<() => void>()
  const waiting = new Map<number, (outcome: PressOutcome) => void>()
  const timers = new Set<ReturnType<typeof setTimeout>>()
  /** What was answered with a yes; the store forgets it a moment later. */
  const settled = new Map<number, Pressed>()
  /** Presses of a moment ago, whose answer may come before anybody looks. */
  const fresh = new Set<number>()
  let items: readonly Queued[] = []
  let changes = 0
  let session: Sender | null | undefined
  let tries = 0
  let retry: ReturnType<typeof setTimeout> | undefined
  let closed = false
  let view: OutboxView = { ...emptyView, sender: parts.lastHere.get() }

  function show(): void {
    const pressed = [
      ...items
        .filter(({ no, place }) => no === null && !fresh.has(place))
        .map((item): Pressed => ({ item, until: null })),
      ...settled.values(),
    ].toSorted((a, b) => a.item.place - b.item.place)
    const sender = parts.lastHere.get()
    const none = pressed.length === 0
    view = {
      items,
      sender,
      signedOut: session !== undefined && session !== sender,
      project: none ? asItIs : remembered((base) => parts.overlay.project(base, pressed)),
      shop: none ? asItIs : remembered((base) => parts.overlay.shop(base, pressed)),
    }
    for (const listener of listeners) listener()
  }
  function after(ms: number, work: () => void): void {
    const timer = setTimeout(() => {
      timers.delete(timer)
      work()
    }, ms)
    timers.add(timer)
  }
  /** Reads the queue anew; what this tab changed meanwhile is in it. */
  async function reload(): Promise<void> {
    let seen: number
    do {
      seen = changes
      const found = await store.all()
      if (seen === changes) items = found.filter(({ place }) => !settled.has(place))
    } while (seen !== changes)
    show()
  }
  function hold(next: readonly Queued[]): void {
    changes += 1
    items = next.toSorted((a, b) => a.place - b.place)
  }
  function changed(): void {
    channel.say({ is: 'changed' })
    show()
  }
  function resolve(place: number, outcome: PressOutcome): void {
    fresh.delete(place)
    waiting.get(place)?.(outcome)
    waiting.delete(place)
  }

  /** Takes a yes into the records, and shows the press until they have it. */
  function settle(item: Queued, came: readonly Changed[]): void {
    const until = Object.fromEntries(came.map(({ record, to }) => [record, to]))
    settled.set(item.place, { item, until })
    hold(items.filter(({ place }) => place !== item.place))
    after(SETTLED_MS, () => {
      settled.delete(item.place)
      void reload()
    })
    for (const change of came) parts.take(change)
  }
  function answered(item: Queued, outcome: Outcome): void {
    if (outcome.status === 200) settle(item, outcome.changed)
    channel.say({ is: 'answered', place: item.place, outcome })
  }
  const sending: Sending = {
    ...parts,
    answered(item, outcome) {
      answered(item, outcome)
      if (outcome.status === 200) show()
      else void reload()
      resolve(item.place, outcome)
    },
  }

  function retryLater(): void {
    clearTimeout(retry)
    const wait = Math.min(LAST_RETRY_MS, FIRST_RETRY_MS * 2 ** tries) * (0.5 + parts.chance() / 2)
    tries += 1
    if (!closed) retry = setTimeout(() => void flush(), wait)
  }
  async function meet(): Promise<void> {
    const here = await parts.here()
    session = here.is === 'nobody' ? null : undefined
    if (here.is !== 'somebody') return
    session = here.sender
    parts.lastHere.set(here.sender)
  }

  /** Sends what waits of whoever is signed in. What is still there afterwards is kept. */
  async function flush(): Promise<void> {
    const tried = [...waiting.keys()]
    try {
      const all = await store.all()
      const found = all.filter(({ no }) => no === null)
      const theirs = () => found.some((item) => senderOf(item) === session)
      // Also what was refused is shown to its own person alone.
      const unknown = all.length > 0 && session === undefined
      if (unknown || (found.length > 0 && !theirs())) await meet()
      // Whoever was thought to be here may have handed the phone on: then it goes on with who has it now.
      for (let turn = 0; turn < 2 && theirs(); turn++) {
        if (!(await send())) break
        await meet()
      }
      if (found.length > 0 && session === undefined) retryLater()
    } catch {
      // The phone's own store failed: what is in it stays.
      retryLater()
    } finally {
      await reload().catch(show)
      for (const place of tried) {
        if (!waiting.has(place)) continue
        if (items.some((item) => item.place === place)) keep(place)
        // Another tab sent it, and its word is on the way; or was lost, and the record will tell.
        else after(NEWS_WITHIN_MS, () => resolve(place, { status: 200, changed: [] }))
      }
    }
  }
  /** @returns whether it stopped because the session isn't theirs any more */
  async function send(): Promise<boolean> {
    if (session === undefined || session === null) return false
    const stopped = await sendUnsent(sending, session)
    // Also where it is starting: phones that waited long for it needn't wait as long once more.
    if (stopped !== 'no answer') tries = 0
    if (stopped === 'no answer' || stopped === 'soon') retryLater()
    return stopped === 'signed out'
  }
  function keep(place: number): void {
    parts.askToBeCalled()
    resolve(place, { status: 'kept' })
    show()
  }

  function follow(item: Queued): Sent {
    const { place } = item
    hold([...items.filter((one) => one.place !== place), item])
    // Whoever pressed was seen by the server as they got this record; it checks that they still are who is signed in.
    session ??= senderOf(item)
    parts.lastHere.set(senderOf(item))
    const outcome = new Promise<PressOutcome>((answer) => {
      waiting.set(place, answer)
    })
    if (!parts.isAway()) {
      fresh.add(place)
      after(SHOWN_AFTER_MS, () => {
        if (fresh.delete(place)) show()
      })
    }
    after(KEPT_AFTER_MS, () => {
      if (waiting.has(place)) keep(place)
    })
    changed()
    void flush()
    return { place, outcome }
  }

  channel.hear((news) => {
    if (news.is === 'answered') {
      const item = items.find(({ place }) => place === news.place)
      if (news.outcome.status === 200 && item !== undefined) settle(item, news.outcome.changed)
      resolve(news.place, news.outcome)
    }
    void reload()
  })
  void flush()

  return {
    view: () => view,
    show,
    subscribe(listener) {
      listeners.add(listener)
      return () => listeners.delete(listener)
    },
    async press(item) {
      const place = await store.add(item)
      return follow({ ...item, place })
    },
    async sendAgain(again) {
      const item = { ...again, no: null }
      await store.put(item)
      return follow(item)
    },
    async drop(place) {
      await store.remove(place)
      hold(items.filter((item) => item.place !== place))
      changed()
    },
    async restore(item) {
      await store.put(item)
      await reload()
      changed()
      void flush()
    },
    wake() {
      tries = 0
      if (view.signedOut) session = undefined
      void flush()
    },
    flush,
    close() {
      closed = true
      clearTimeout(retry)
      for (const timer of timers) clearTimeout(timer)
      channel.close()
    },
  }
}
