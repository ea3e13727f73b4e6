import { Instant } from '../../record/scalars.ts'
import { sendWaitingFile } from '../files/send-waiting-file.ts'
import { postCommand, whoIsHere } from '../http.ts'
import { openPhoneStore } from '../phone/phone-store.ts'
import { outboxChannel } from './outbox-channel.ts'
import { type Sending, sendUnsent } from './send-unsent.ts'
import { senderOf } from './sender-of.ts'
import { unsentStore } from './unsent-store.ts'
import { ownLocks, webLocks } from './with-locks.ts'

/** What was left when sending stopped. */
export interface Flushed {
  /** Commands of whoever is signed in that still wait for an answer: the browser may call again later. */
  readonly left: number
}

/**
 * Sends what waits on this phone, of whoever is signed in; also in the service worker, with no page open. Open tabs are told of each
 * answer.
 * @throws where the browser keeps nothing
 */
export async function flushOutbox(): Promise<Flushed> {
  const phone = await openPhoneStore()
  const channel = outboxChannel()
  try {
    const store = unsentStore(phone)
    const here = (await store.all()).length === 0 ? null : await whoIsHere()
    if (here?.is !== 'somebody') return { left: here?.is === 'no answer' ? 1 : 0 }
    const { sender } = here
    const sending: Sending = {
      store,
      lock: 'locks' in navigator ? webLocks(navigator.locks) : ownLocks(),
      post: (item) => postCommand(item.request, item.person),
      // Nobody is here to ask.
      hasCode: () => false,
      sendFile: sendWaitingFile,
      now: () => Instant.parse(new Date().toISOString()),
      answered: ({ place }, outcome) => channel.say({ is: 'answered', place, outcome }),
    }
    await sendUnsent(sending, sender)
    const left = (await store.all()).filter(
      (item) => item.no === null && item.needs === undefined && senderOf(item) === sender,
    )
    return { left: left.length }
  } finally {
    channel.close()
    phone.close()
  }
}
