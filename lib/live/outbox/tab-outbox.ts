import { DeviceId, PersonId, type ShopId } from '../../record/ids.ts'
import { sendWaitingFile } from '../files/send-waiting-file.ts'
import { postCommand, whoIsHere } from '../http.ts'
import { inputIssues } from '../input-issues.ts'
import type { Live } from '../live.ts'
import { openPhoneStore } from '../phone/phone-store.ts'
import { phoneIsOf, phonePerson } from '../phone/whose-phone.ts'
import { shopKey } from '../record-keys.ts'
import { hasCode, takeCode } from '../shop-phone/codes.ts'
import type { ShopState } from '../shop-state.ts'
import { fetchCommand, isHere } from './commands-here.ts'
import { itemOf } from './item-of.ts'
import { type Outbox, openOutbox } from './outbox.ts'
import { outboxChannel } from './outbox-channel.ts'
import { unsentOf } from './outbox-view.ts'
import { projectOverlaid, shopOverlaid } from './overlay.ts'
import type { Sender } from './sender-of.ts'
import { SYNC_TAG } from './sync-tag.ts'
import { unsentStore } from './unsent-store.ts'
import { ownLocks, webLocks } from './with-locks.ts'

const LAST_HERE = 'fettleyard-last-here'

/** The queue of a tab with the rules, which presses are made by and judged with before they are sent. */
export interface TabOutbox extends Outbox {
  readonly itemOf: typeof itemOf
  readonly issuesOf: typeof inputIssues
  readonly fetchCommand: typeof fetchCommand
}

/**
 * The queue of this tab, on its records and its clock. It sends at once, on return of the network, and whenever the page is looked at
 * again.
 * @throws where the browser keeps nothing
 */
export async function openTabOutbox(live: Live): Promise<TabOutbox> {
  const store = unsentStore(await openPhoneStore())
  const bookOf = (shop: ShopId) => live.query.getQueryData<ShopState>(shopKey(shop))?.book
  const outbox = openOutbox({
    store,
    lock: 'locks' in navigator ? webLocks(navigator.locks) : ownLocks(),
    post: (item) => postCommand(item.request, item.person, takeCode(item.request.key)),
    hasCode: (item) => hasCode(item.request.key),
    sendFile: sendWaitingFile,
    now: live.now,
    channel: outboxChannel(),
    here: whoIsHere,
    take: live.take,
    isAway: () => !navigator.onLine || live.connection.link() === 'away',
    lastHere: { get: lastHere, set: nowHere },
    askToBeCalled: () => void askToBeCalled(),
    overlay: {
      project: (base, pressed) => projectOverlaid(base, pressed, bookOf),
      shop: shopOverlaid,
    },
    chance: Math.random,
  })
  /** What waits is laid over the records once its rules are here; until then it is only counted. */
  const fetchRules = () => {
    const missing = outbox.view().items.find(({ request }) => !isHere(request.name))
    if (missing !== undefined) fetchCommand(missing.request.name).then(outbox.show, () => undefined)
  }
  const stops = [
    outbox.subscribe(() => {
      showCount(unsentOf(outbox.view()).mine.length)
      fetchRules()
    }),
    live.connection.subscribe(() => {
      if (live.connection.link() === 'live') outbox.wake()
    }),
    on(window, 'online', outbox.wake),
    on(window, 'pageshow', outbox.wake),
    on(document, 'visibilitychange', () => {
      if (document.visibilityState === 'visible') outbox.wake()
    }),
  ]
  return {
    ...outbox,
    itemOf,
    issuesOf: inputIssues,
    fetchCommand,
    close() {
      for (const stop of stops) stop()
      outbox.close()
    },
  }
}

/** On the app's icon, where the phone shows it there. */
function showCount(count: number): void {
  if (!('setAppBadge' in navigator)) return
  void (count === 0 ? navigator.clearAppBadge() : navigator.setAppBadge(count)).catch(() => {})
}

function on(target: EventTarget, event: string, listener: () => void): () => void {
  target.addEventListener(event, listener)
  return () => target.removeEventListener(event, listener)
}

/** Who was here last: a shop's phone for as long as it is one, a person until they sign out. */
function lastHere(): Sender | null {
  const found = DeviceId.safeParse(localStorage.getItem(LAST_HERE))
  return found.success ? found.data : phonePerson()
}

function nowHere(sender: Sender): void {
  localStorage.setItem(LAST_HERE, sender)
  const person = PersonId.safeParse(sender)
  if (person.success) phoneIsOf(person.data)
}

/** Some browsers wake the service worker when the network is back, also with no page open. */
interface Sync {
  readonly register: (tag: string) => Promise<void>
}
const hasSync = (there: object): there is { readonly sync: Sync } => 'sync' in there

async function askToBeCalled(): Promise<void> {
  try {
    // `ready` waits for ever where no worker was registered.
    const registration = await navigator.serviceWorker?.getRegistration()
    if (registration !== undefined && hasSync(registration)) {
      await registration.sync.register(SYNC_TAG)
    }
  } catch {
    // It may be forbidden, as in a private window: then it goes when the page is open.
  }
}
