import type { Sha256 } from '../../record/scalars.ts'
import type { PhoneStore } from '../phone/phone-store.ts'
import type { FileSent } from './send-unsent.ts'

/** Sends the bytes of a file that a command names, where this phone still holds them; else they arrived long ago. */
export async function sendNamedFile(phone: PhoneStore, sha256: Sha256): Promise<FileSent> {
  const file = await phone.get('files', sha256)
  if (file === undefined) return { is: 'there' }
  try {
    const response = await fetch(`${file.folder}/${sha256}`, {
      method: 'PUT',
      headers: { 'content-type': 'application/offset+octet-stream' },
      body: file.bytes,
    })
    if (response.ok) {
      await phone.delete('files', sha256)
      return { is: 'there' }
    }
    if (response.status === 401 || response.status === 429 || response.status >= 500)
      return { is: 'waits' }
    return { is: 'refused', message: `The photo ${file.name} can’t be kept by the server.` }
  } catch {
    return { is: 'waits' }
  }
}
