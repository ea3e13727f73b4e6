import type { PersonId } from '../../record/ids.ts'
import type { WaitingFile } from '../phone/phone-store.ts'
import { tellProgress } from './file-news.ts'
import { changeFile, fileOnPhone, filesOnPhone } from './file-shelf.ts'
import { dropFile } from './keep-file.ts'

/** What came of sending a file: it is there; it waits for a signal or for a session; or the server won't have it. */
export type SentFile =
  | { readonly is: 'sent' }
  | { readonly is: 'waits'; readonly for: 'signal' | 'session' }
  | { readonly is: 'refused'; readonly status: number; readonly message: string }

/**
 * Sends what waits on this phone for that address, going on where it stopped; `sent` too where nothing waits any more.
 * The same in a tab and in the service worker; two at once send it once.
 */
export const sendWaitingFile = (address: string): Promise<SentFile> =>
  'locks' in navigator
    ? navigator.locks.request(`file ${address}`, () => sendOne(address))
    : sendOne(address)

/** A press that nobody came back to: its photos, which the server has, are forgotten here after so long, in ms. */
const FORGET_MS = 14 * 86_400_000

/** Sends all that waits for this person, oldest first; stops where there is no signal. A guest's goes with anybody's. */
export async function sendWaitingFiles(person: PersonId | null): Promise<SentFile> {
  for (const file of await filesOnPhone()) {
    if (file.bytes === null && Date.now() - Date.parse(file.addedAt) > FORGET_MS)
      await dropFile(file.address)
    if (file.bytes === null || file.no !== null) continue
    if (file.person !== null && file.person !== person) continue
    const sent = await sendWaitingFile(file.address)
    if (sent.is === 'waits') return sent
  }
  return { is: 'sent' }
}

async function sendOne(address: string): Promise<SentFile> {
  const file = await fileOnPhone(address)
  if (file === undefined || file.bytes === null) return { is: 'sent' }
  const sent = await put(file, file.bytes)
  if (sent.is === 'sent') {
    await changeFile(address, (there) =>
      there.use === null ? null : { ...there, bytes: null, upload: null, no: null },
    )
  } else if (sent.is === 'refused') {
    await changeFile(address, (there) => ({ ...there, no: sent.message }))
  }
  return sent
}

async function put(file: WaitingFile, bytes: Blob): Promise<SentFile> {
  const { address } = file
  // Loaded with the first file that is sent: it weighs more than most screens.
  const { uploadFile } = await import('./upload-file.ts')
  const end = await uploadFile(file, bytes, {
    began: (upload) => void changeFile(address, (there) => ({ ...there, upload })),
    progress: (sent) => tellProgress({ address, sent }),
  })
  if (end.ok) return { is: 'sent' }
  const { status } = end
  if (status === 401) return { is: 'waits', for: 'session' }
  if (status === 0 || status === 429 || status >= 500) return { is: 'waits', for: 'signal' }
  return { is: 'refused', status, message: end.message || 'The server won’t have this file.' }
}
