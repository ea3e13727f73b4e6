import type { Instant } from '../../record/scalars.ts'
import { weightOf } from '../../record/weight-of.ts'
import { filesFolder } from '../files/files-folder.ts'
import type { SentFile } from '../files/send-waiting-file.ts'
import type { Outcome } from '../http.ts'
import type { UnsentNo } from '../phone/phone-store.ts'
import { asksForCode } from '../shop-phone/asks-for-code.ts'
import { type Sender, senderOf } from './sender-of.ts'
import type { Queued, UnsentStore } from './unsent-store.ts'
import type { WithLocks } from './with-locks.ts'

/** What sending needs of its surroundings; the same in a tab and in the service worker. */
export interface Sending {
  readonly store: UnsentStore
  readonly lock: WithLocks
  readonly post: (item: Queued) => Promise<Outcome>
  /** Whether a hand has signed it since it was asked for their code. */
  readonly hasCode: (item: Queued) => boolean
  /** Sends the file of that address, where it waits on this phone. */
  readonly sendFile: (address: string) => Promise<SentFile>
  readonly now: () => Instant
  /** Told of each answer before the queue forgets the command. */
  readonly answered: (item: Queued, outcome: Outcome) => void
}

/** Why sending stopped: nothing of theirs is left, the server is starting, no answer came, they are signed out, or a hand must sign first. */
export type Stopped = 'empty' | 'soon' | 'no answer' | 'signed out' | 'asks'

const waitsFor = (sender: Sender) => (item: Queued) => item.no === null && senderOf(item) === sender

/** Lanes that a waiting command ties together: its order counts in each of them. */
export function tiedLanes(items: readonly Queued[]): readonly (readonly string[])[] {
  let groups: readonly (readonly string[])[] = []
  for (const { lanes } of items) {
    const touched = groups.filter((group) => group.some((lane) => lanes.includes(lane)))
    const together = [...new Set([...touched.flat(), ...lanes])]
    groups = [...groups.filter((group) => !touched.includes(group)), together]
  }
  return groups
}

/** Too many codes were tried: what is to be signed waits for its hand, and for the time to pass. */
const isOverTried = (item: Queued, { status }: Outcome): boolean =>
  status === 429 && item.device !== undefined && weightOf[item.request.name] === 'signature'

/**
 * Sends what a person or a shop's phone has waiting: in order within a lane, lanes beside each other, each lane by one tab at a time. What the server
 * refuses stays with its reason, and what comes after it is sent all the same: the server judges it.
 */
export async function sendUnsent(sending: Sending, sender: Sender): Promise<Stopped> {
  for (;;) {
    const waiting = (await sending.store.all()).filter(waitsFor(sender))
    if (waiting.length === 0) return 'empty'
    const ends = await Promise.all(
      tiedLanes(waiting).map((lanes) =>
        sending.lock(lanes, () => sendInOrder(sending, sender, lanes)),
      ),
    )
    for (const end of ['signed out', 'soon', 'no answer', 'asks'] as const) {
      if (ends.includes(end)) return end
    }
  }
}

async function sendInOrder(
  sending: Sending,
  sender: Sender,
  lanes: readonly string[],
): Promise<Stopped> {
  for (;;) {
    const item = (await sending.store.all()).find(
      (one) => waitsFor(sender)(one) && one.lanes.some((lane) => lanes.includes(lane)),
    )
    // One that was pressed meanwhile may tie in a lane that isn't held here: it goes in the next round.
    if (item === undefined || !item.lanes.every((lane) => lanes.includes(lane))) return 'empty'
    // It keeps its place, and what comes after it in the lane does.
    if (item.needs !== undefined && !sending.hasCode(item)) return 'asks'
    const outcome = await sendOne(sending, item)
    if (asksForCode(outcome) || isOverTried(item, outcome)) {
      const needs = outcome.status === 403 ? (outcome.needs ?? 'code') : 'code'
      await sending.store.hold(item.place, needs)
      sending.answered(item, outcome)
      return 'asks'
    }
    switch (outcome.status) {
      case 200:
        sending.answered(item, outcome)
        await sending.store.remove(item.place)
        break
      case 401:
        return 'signed out'
      case 0:
        return outcome.soon ? 'soon' : 'no answer'
      case 429:
      case 503:
        return 'no answer'
      default:
        await sending.store.refuse(item.place, noOf(outcome, sending.now()))
        sending.answered(item, outcome)
    }
  }
}

async function sendOne(sending: Sending, item: Queued): Promise<Outcome> {
  const [home = ''] = item.lanes
  for (const sha256 of item.files) {
    // Equal bytes may wait for another project too, or for somebody else: they go with their own press.
    const sent = await sending.sendFile(`${filesFolder(home)}/${sha256}`)
    if (sent.is === 'refused') return { status: 422, message: sent.message }
    if (sent.is === 'waits')
      return sent.for === 'session' ? { status: 401, message: 'Sign in again.' } : { status: 0 }
  }
  return sending.post(item)
}

const noOf = (outcome: Exclude<Outcome, { readonly status: 0 | 200 }>, at: Instant): UnsentNo => ({
  status: outcome.status,
  message: outcome.message,
  conditions: outcome.status === 409 ? outcome.conditions : [],
  issues: outcome.status === 400 ? outcome.issues : [],
  at,
})
