import type { DeviceNeeds } from '../../record/device-needs.ts'
import type { PhoneStore, Unsent, UnsentNo } from '../phone/phone-store.ts'

/** A command in its place in the queue. */
export interface Queued extends Unsent {
  readonly place: number
}

/** The queue on this phone. Each call is one transaction of its own. */
export interface UnsentStore {
  /** Puts a command last. Resolves once it would survive the phone's going out. @returns its place */
  readonly add: (item: Unsent) => Promise<number>
  /** All of them, whoever pressed them, in order. */
  readonly all: () => Promise<readonly Queued[]>
  /** Puts a command into its place, also where it was dropped from. */
  readonly put: (item: Queued) => Promise<void>
  readonly remove: (place: number) => Promise<void>
  /** Keeps what its hand must say first; nothing where it was dropped meanwhile. */
  readonly hold: (place: number, needs: DeviceNeeds) => Promise<void>
  /** Keeps why the server said no; nothing where it was dropped meanwhile. */
  readonly refuse: (place: number, no: UnsentNo) => Promise<void>
}

/** Written through to the disk before a press counts as kept. */
const SAFE = { durability: 'strict' } as const

/** The queue in a phone's store. */
export function unsentStore(phone: PhoneStore): UnsentStore {
  return {
    async add(item) {
      const write = phone.transaction('unsent', 'readwrite', SAFE)
      const place = await write.store.add(item)
      await write.done
      return place
    },
    async all() {
      const found = await phone.getAll('unsent')
      return found.flatMap((item) =>
        // What an earlier program kept has not all that this one shows.
        item.place === undefined
          ? []
          : [{ ...item, place: item.place, entered: item.entered ?? [] }],
      )
    },
    async put(item) {
      const write = phone.transaction('unsent', 'readwrite', SAFE)
      await write.store.put(item)
      await write.done
    },
    async remove(place) {
      await phone.delete('unsent', place)
    },
    async hold(place, needs) {
      const write = phone.transaction('unsent', 'readwrite', SAFE)
      const item = await write.store.get(place)
      if (item !== undefined) await write.store.put({ ...item, needs })
      await write.done
    },
    async refuse(place, no) {
      const write = phone.transaction('unsent', 'readwrite', SAFE)
      const item = await write.store.get(place)
      if (item !== undefined) await write.store.put({ ...item, no })
      await write.done
    },
  }
}
