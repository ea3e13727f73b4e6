import { openPhoneStore, type PhoneStore, type WaitingFile } from '../phone/phone-store.ts'
import { tellFilesChanged } from './file-news.ts'

let opened: Promise<PhoneStore | null> | undefined
/** Where the browser keeps nothing, as in some private windows: files then live as long as the page. */
const unkept = new Map<string, WaitingFile>()

const store = (): Promise<PhoneStore | null> => {
  opened ??= openPhoneStore().catch(() => null)
  return opened
}

/** Every file on this phone, in the order in which they were chosen. */
export async function filesOnPhone(): Promise<readonly WaitingFile[]> {
  const kept = (await (await store())?.getAll('files')) ?? []
  return [...kept, ...unkept.values()].toSorted((a, b) => (a.addedAt < b.addedAt ? -1 : 1))
}

/** The file under that address; undefined where there is none. */
export const fileOnPhone = async (address: string): Promise<WaitingFile | undefined> =>
  unkept.get(address) ?? (await (await store())?.get('files', address))

/** Puts a file there. Where the phone has no more room it lives as long as the page. */
export async function putFile(file: WaitingFile): Promise<void> {
  try {
    const db = await store()
    if (db === null) throw new Error('This browser keeps nothing.')
    await db.put('files', file)
  } catch {
    unkept.set(file.address, file)
  }
  tellFilesChanged()
}

/** Changes what is there, in one step; nothing where it went meanwhile. Null takes it away. */
export async function changeFile(
  address: string,
  change: (file: WaitingFile) => WaitingFile | null,
): Promise<void> {
  const inMemory = unkept.get(address)
  if (inMemory !== undefined) {
    const changed = change(inMemory)
    if (changed === null) unkept.delete(address)
    else unkept.set(address, changed)
  } else {
    const transaction = (await store())?.transaction('files', 'readwrite')
    const file = await transaction?.store.get(address)
    if (transaction !== undefined && file !== undefined) {
      const changed = change(file)
      await (changed === null ? transaction.store.delete(address) : transaction.store.put(changed))
    }
    await transaction?.done
  }
  tellFilesChanged()
}
