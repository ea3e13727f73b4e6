import type { ProjectState } from '../project-state.ts'
import type { ShopState } from '../shop-state.ts'
import type { Overlaid } from './overlay.ts'
import { type Sender, senderOf } from './sender-of.ts'
import type { Queued } from './unsent-store.ts'

/** The queue as screens see it; another object whenever something of it is another. */
export interface OutboxView {
  /** Whoever's: what is not the reader's own is counted and never shown. */
  readonly items: readonly Queued[]
  /** Who is signed in here, person or shop's phone, or was last; null where nobody is known. */
  readonly sender: Sender | null
  /** The session of who was here last has ended: their presses wait until they sign in again. */
  readonly signedOut: boolean
  /** Records with what is not sent put in. */
  readonly project: (base: ProjectState) => Overlaid<ProjectState>
  readonly shop: (base: ShopState) => Overlaid<ShopState>
}

const NOTHING: ReadonlySet<string> = new Set()

/** A record as it is, with nothing put in. */
export const asItIs = <State>(state: State): Overlaid<State> => ({ state, unsent: NOTHING })

/** Before the queue has been read. */
export const emptyView: OutboxView = {
  items: [],
  sender: null,
  signedOut: false,
  project: asItIs,
  shop: asItIs,
}

/** Keeps what a function made of each object, as long as that lives. */
export function remembered<State extends object, Made>(
  make: (state: State) => Made,
): (state: State) => Made {
  const made = new WeakMap<State, Made>()
  return (state) => {
    const known = made.get(state)
    if (known !== undefined) return known
    const fresh = make(state)
    made.set(state, fresh)
    return fresh
  }
}

/** What is unsent of one person, or of the shop's phone: in order, and how many of others wait for them to sign in again. */
export interface UnsentOf {
  readonly mine: readonly Queued[]
  readonly others: readonly Queued[]
}

/** Tells apart whose presses are on this phone. */
export const unsentOf = ({ items, sender }: OutboxView): UnsentOf => ({
  mine: items.filter((item) => senderOf(item) === sender),
  others: items.filter((item) => senderOf(item) !== sender),
})
