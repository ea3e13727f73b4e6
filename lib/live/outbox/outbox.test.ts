import 'fake-indexeddb/auto'
import { afterEach, describe, expect, it } from 'vitest'
import { at } from '../../../test/builders.ts'
import { done, jory, no, note, sil, textOf } from '../../../test/unsent-notes.ts'
import type { PersonId } from '../../record/ids.ts'
import type { Here, Outcome } from '../http.ts'
import { openPhoneStore, type Unsent } from '../phone/phone-store.ts'
import { type Outbox, openOutbox } from './outbox.ts'
import type { OutboxChannel, OutboxNews } from './outbox-channel.ts'
import { asItIs, unsentOf } from './outbox-view.ts'
import type { Sender } from './sender-of.ts'
import { unsentStore } from './unsent-store.ts'
import { ownLocks, type WithLocks } from './with-locks.ts'

/** The server as a phone meets it: whether it is reached, who is signed in, what it answers, and what it has carried out. */
interface Server {
  reached: boolean
  person: PersonId | null
  answer: Outcome
  readonly done: Map<string, string>
}
const aServer = (): Server => ({ reached: true, person: sil, answer: done, done: new Map() })

/** Tells all tabs but the one that speaks. */
function aChannel(ears: Set<(news: OutboxNews) => void>): OutboxChannel {
  let own: ((news: OutboxNews) => void) | undefined
  return {
    say(news) {
      for (const ear of ears) if (ear !== own) ear(news)
    },
    hear(listener) {
      own = listener
      ears.add(listener)
    },
    close() {
      if (own !== undefined) ears.delete(own)
    },
  }
}

const opened: Outbox[] = []

/** A phone on which tabs can be opened, and closed without a word. */
async function aPhone(server: Server) {
  const phone = await openPhoneStore()
  await phone.clear('unsent')
  const store = unsentStore(phone)
  const lock: WithLocks = ownLocks()
  const ears = new Set<(news: OutboxNews) => void>()
  // The server has shown it a page.
  let last: Sender | null = sil
  const here = async (): Promise<Here> => {
    if (!server.reached) return { is: 'no answer' }
    return server.person === null ? { is: 'nobody' } : { is: 'somebody', sender: server.person }
  }
  function aTab(): Outbox {
    const outbox = openOutbox({
      store,
      lock,
      channel: aChannel(ears),
      here,
      async post(item) {
        if (!server.reached) return { status: 0 }
        if (item.person !== server.person) return { status: 401, message: 'Sign in first.' }
        if (server.answer.status !== 200) return server.answer
        server.done.set(item.request.key, textOf(item))
        return done
      },
      hasCode: () => false,
      sendFile: async () => ({ is: 'sent' }),
      now: () => at(200),
      take: () => {},
      isAway: () => !server.reached,
      lastHere: {
        get: () => last,
        set(sender) {
          last = sender
        },
      },
      askToBeCalled: () => {},
      overlay: { project: asItIs, shop: asItIs },
      chance: () => 0.5,
    })
    opened.push(outbox)
    return outbox
  }
  return { store, aTab }
}

const press = async (tab: Outbox, item: Unsent) => (await tab.press(item)).outcome
const arrived = (server: Server) => [...server.done.values()]

describe('a press', () => {
  afterEach(() => {
    for (const outbox of opened.splice(0)) outbox.close()
  })

  it('that is answered leaves nothing behind', async () => {
    const server = aServer()
    const { store, aTab } = await aPhone(server)
    const tab = aTab()
    expect(await press(tab, note('one'))).toEqual(done)
    expect(arrived(server)).toEqual(['one'])
    expect(tab.view().items).toEqual([])
    await expect.poll(() => store.all()).toEqual([])
  })

  it('without signal is kept, and goes by itself once there is', async () => {
    const server = aServer()
    server.reached = false
    const tab = (await aPhone(server)).aTab()
    expect(await press(tab, note('one'))).toEqual({ status: 'kept' })
    expect(await press(tab, note('two'))).toEqual({ status: 'kept' })
    expect(unsentOf(tab.view()).mine.map(textOf)).toEqual(['one', 'two'])
    server.reached = true
    tab.wake()
    await expect.poll(() => tab.view().items).toEqual([])
    expect(arrived(server)).toEqual(['one', 'two'])
  })

  it('goes soon after a server that was away for long says that it is starting', async () => {
    const server = aServer()
    server.reached = false
    const tab = (await aPhone(server)).aTab()
    await press(tab, note('one'))
    // By now the next try by itself is most of a minute away.
    for (let tries = 0; tries < 8; tries++) await tab.flush()
    server.reached = true
    server.answer = { status: 0, soon: true }
    await tab.flush()
    server.answer = done
    await expect.poll(() => arrived(server), { timeout: 3000 }).toEqual(['one'])
  })

  it('outlives the tab that it was made in', async () => {
    const server = aServer()
    server.reached = false
    const { aTab } = await aPhone(server)
    const first = aTab()
    await press(first, note('one'))
    first.close()
    server.reached = true
    const second = aTab()
    await expect.poll(() => arrived(server)).toEqual(['one'])
    await expect.poll(() => second.view().items).toEqual([])
  })

  it('whose tab dies between the answer and the forgetting is sent again with its key, and counts once', async () => {
    const server = aServer()
    const { store, aTab } = await aPhone(server)
    const item = note('one')
    await store.add(item)
    server.done.set(item.request.key, 'one')
    const tab = aTab()
    await expect.poll(() => store.all()).toEqual([])
    expect(tab.view().items).toEqual([])
    expect(arrived(server)).toEqual(['one'])
  })

  it('waits while its person is signed out, and goes once they are back', async () => {
    const server = aServer()
    const tab = (await aPhone(server)).aTab()
    server.person = null
    expect(await press(tab, note('one'))).toEqual({ status: 'kept' })
    expect(tab.view()).toMatchObject({ signedOut: true, sender: sil })
    tab.wake()
    await expect.poll(() => tab.view().signedOut).toBe(true)
    expect(arrived(server)).toEqual([])
    server.person = sil
    tab.wake()
    await expect.poll(() => arrived(server)).toEqual(['one'])
    expect(tab.view().signedOut).toBe(false)
  })

  it('of one hand is neither sent nor shown while another has the phone', async () => {
    const server = aServer()
    server.reached = false
    const tab = (await aPhone(server)).aTab()
    await press(tab, note('Sil’s'))
    server.reached = true
    server.person = jory
    expect(await press(tab, note('Jory’s', { person: jory }))).toEqual(done)
    expect(arrived(server)).toEqual(['Jory’s'])
    expect(tab.view().sender).toBe(jory)
    expect(unsentOf(tab.view()).mine).toEqual([])
    expect(unsentOf(tab.view()).others.map(textOf)).toEqual(['Sil’s'])
  })

  it('is known to every tab, and sent by one of them', async () => {
    const server = aServer()
    server.reached = false
    const { aTab } = await aPhone(server)
    const [one, other] = [aTab(), aTab()]
    await press(one, note('one'))
    await press(other, note('two'))
    await expect.poll(() => one.view().items.map(textOf)).toEqual(['one', 'two'])
    server.reached = true
    one.wake()
    other.wake()
    for (const tab of [one, other]) await expect.poll(() => tab.view().items).toEqual([])
    expect(arrived(server)).toEqual(['one', 'two'])
  })

  it('that is refused stays with the reason; sent again it keeps its key, dropped it can be put back', async () => {
    const server = aServer()
    server.answer = no
    const tab = (await aPhone(server)).aTab()
    const item = note('one')
    expect(await press(tab, item)).toEqual(no)
    await expect.poll(() => tab.view().items[0]?.no).toMatchObject({ status: 409, at: at(200) })
    const [refused] = tab.view().items
    if (refused === undefined) throw new Error('It is not kept.')
    await tab.drop(refused.place)
    expect(tab.view().items).toEqual([])
    await tab.restore(refused)
    expect(tab.view().items).toEqual([refused])
    server.answer = done
    expect(await (await tab.sendAgain(refused)).outcome).toEqual(done)
    expect([...server.done]).toEqual([[item.request.key, 'one']])
  })
})
