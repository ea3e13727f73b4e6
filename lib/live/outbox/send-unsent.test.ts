import 'fake-indexeddb/auto'
import { beforeEach, describe, expect, it } from 'vitest'
import { anId, at, project } from '../../../test/builders.ts'
import { done, jory, no, note, sil, textOf } from '../../../test/unsent-notes.ts'
import type { CommandAnswer } from '../../command/wire.ts'
import { DeviceId } from '../../record/ids.ts'
import { Sha256 } from '../../record/scalars.ts'
import type { Outcome } from '../http.ts'
import { openPhoneStore } from '../phone/phone-store.ts'
import { type Sending, sendUnsent, tiedLanes } from './send-unsent.ts'
import { type Queued, type UnsentStore, unsentStore } from './unsent-store.ts'
import { ownLocks } from './with-locks.ts'

/** A phone with a queue, and a server that answers as it is told. */
async function aPhone(answer: (item: Queued) => Outcome | Promise<Outcome>) {
  const phone = await openPhoneStore()
  await phone.clear('unsent')
  const store: UnsentStore = unsentStore(phone)
  const arrived: unknown[] = []
  const signed = new Set<string>()
  const sending: Sending = {
    store,
    lock: ownLocks(),
    post: async (item) => {
      const outcome = await answer(item)
      if (outcome.status !== 0) arrived.push(textOf(item))
      return outcome
    },
    hasCode: ({ request }) => signed.has(request.key),
    sendFile: async () => ({ is: 'sent' }),
    now: () => at(200),
    answered: () => {},
  }
  return { store, sending, arrived, signed }
}

describe('what waits on a phone', () => {
  let signal = true
  beforeEach(() => {
    signal = true
  })

  it('goes in the order in which it was pressed, and is forgotten once it was answered', async () => {
    const { store, sending, arrived } = await aPhone(() => done)
    for (const text of ['one', 'two', 'three']) await store.add(note(text))
    expect(await sendUnsent(sending, sil)).toBe('empty')
    expect(arrived).toEqual(['one', 'two', 'three'])
    expect(await store.all()).toEqual([])
  })

  it('stays while there is no signal, with its key, and goes once there is', async () => {
    signal = false
    const { store, sending, arrived } = await aPhone(() => (signal ? done : { status: 0 }))
    await store.add(note('one'))
    const before = await store.all()
    expect(await sendUnsent(sending, sil)).toBe('no answer')
    expect(await store.all()).toEqual(before)
    signal = true
    expect(await sendUnsent(sending, sil)).toBe('empty')
    expect(arrived).toEqual(['one'])
  })

  it('is kept with the reason where it is refused, and what comes after it goes on', async () => {
    const { store, sending, arrived } = await aPhone((item) => (textOf(item) === 'two' ? no : done))
    for (const text of ['one', 'two', 'three']) await store.add(note(text))
    expect(await sendUnsent(sending, sil)).toBe('empty')
    expect(arrived).toEqual(['one', 'two', 'three'])
    expect(await store.all()).toMatchObject([
      { request: { input: { text: 'two' } }, no: { status: 409, at: at(200) } },
    ])
  })

  it('stops where the session has ended, and loses nothing', async () => {
    const { store, sending } = await aPhone(() => ({ status: 401, message: 'Sign in first.' }))
    for (const text of ['one', 'two']) await store.add(note(text))
    expect(await sendUnsent(sending, sil)).toBe('signed out')
    expect((await store.all()).map(textOf)).toEqual(['one', 'two'])
  })

  it('never goes while another hand is signed in', async () => {
    const { store, sending, arrived } = await aPhone(() => done)
    await store.add(note('Sil’s'))
    await store.add(note('Jory’s', { person: jory }))
    expect(await sendUnsent(sending, jory)).toBe('empty')
    expect(arrived).toEqual(['Jory’s'])
    expect((await store.all()).map(textOf)).toEqual(['Sil’s'])
  })

  it('waits behind a signature on the shop’s phone until its hand has signed, in its order', async () => {
    const device = DeviceId.parse('dev_bay')
    const asks: CommandAnswer = { status: 403, message: 'Sign.', needs: 'code' }
    const { store, sending, arrived, signed } = await aPhone((item) =>
      textOf(item) === 'two' && !signed.has(item.request.key) ? asks : done,
    )
    await store.add(note('one', { device, person: jory }))
    const two = note('two', { device })
    const place = await store.add(two)
    await store.add(note('three', { device, person: jory }))
    expect(await sendUnsent(sending, device)).toBe('asks')
    expect(arrived).toEqual(['one', 'two'])
    expect(await store.all()).toMatchObject([{ place, needs: 'code', no: null }, { no: null }])
    // It isn’t tried again without its code.
    expect(await sendUnsent(sending, device)).toBe('asks')
    expect(arrived).toEqual(['one', 'two'])
    signed.add(two.request.key)
    expect(await sendUnsent(sending, device)).toBe('empty')
    expect(arrived).toEqual(['one', 'two', 'two', 'three'])
  })

  it('of the shop’s phone goes out by nobody’s own session', async () => {
    const device = DeviceId.parse('dev_bay')
    const { store, sending, arrived } = await aPhone(() => done)
    await store.add(note('on the bench', { device }))
    expect(await sendUnsent(sending, sil)).toBe('empty')
    expect(arrived).toEqual([])
    expect(await sendUnsent(sending, device)).toBe('empty')
    expect(arrived).toEqual(['on the bench'])
  })

  it('of one project doesn’t wait for another, but what touches both waits for both', async () => {
    const other = anId('prj', 'other')
    const gates = new Map<unknown, () => void>()
    const { store, sending, arrived } = await aPhone(
      (item) =>
        new Promise((resolve) => {
          gates.set(textOf(item), () => resolve(done))
        }),
    )
    await store.add(note('slow'))
    await store.add(note('quick', { lanes: [other] }))
    const sent = sendUnsent(sending, sil)
    await expect.poll(() => [...gates.keys()]).toEqual(['slow', 'quick'])
    gates.get('quick')?.()
    await store.add(note('both', { lanes: [project, other] }))
    await expect.poll(() => arrived).toEqual(['quick'])
    gates.get('slow')?.()
    await expect.poll(() => [...gates.keys()]).toEqual(['slow', 'quick', 'both'])
    gates.get('both')?.()
    expect(await sent).toBe('empty')
    expect(arrived).toEqual(['quick', 'slow', 'both'])
  })

  it('is sent once by two tabs that share the lane', async () => {
    const { store, sending, arrived } = await aPhone(() => done)
    for (const text of ['one', 'two', 'three']) await store.add(note(text))
    await Promise.all([sendUnsent(sending, sil), sendUnsent(sending, sil)])
    expect(arrived).toEqual(['one', 'two', 'three'])
  })

  it('waits for its photos', async () => {
    const photo = Sha256.parse('a'.repeat(64))
    const { store, sending, arrived } = await aPhone(() => done)
    await store.add(note('with a photo', { files: [photo] }))
    let arrives = false
    const asked: string[] = []
    const slow: Sending = {
      ...sending,
      async sendFile(address) {
        asked.push(address)
        return arrives ? { is: 'sent' } : { is: 'waits', for: 'signal' }
      },
    }
    expect(await sendUnsent(slow, sil)).toBe('no answer')
    expect(arrived).toEqual([])
    expect(asked).toEqual([`/api/projects/${project}/files/${photo}`])
    arrives = true
    expect(await sendUnsent(slow, sil)).toBe('empty')
    expect(arrived).toEqual(['with a photo'])
  })

  it('is not put back by a late no where it was dropped meanwhile', async () => {
    const { store, sending } = await aPhone(async (item) => {
      await store.remove(item.place)
      return no
    })
    await store.add(note('dropped'))
    expect(await sendUnsent(sending, sil)).toBe('empty')
    expect(await store.all()).toEqual([])
  })
})

describe('lanes', () => {
  it('are tied together by a press that touches both, and by nothing else', () => {
    const queued = (place: number, lanes: readonly string[]): Queued => ({
      ...note('x'),
      place,
      lanes,
    })
    const items = [queued(1, ['a']), queued(2, ['b']), queued(3, ['c']), queued(4, ['a', 'b'])]
    expect(tiedLanes(items).map((group) => [...group].sort())).toEqual([['c'], ['a', 'b']])
  })
})
