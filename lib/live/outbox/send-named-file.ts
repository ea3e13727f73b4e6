import type { Sha256 } from '../../record/scalars.ts'
import { sendWaitingFile } from '../files/send-waiting-file.ts'
import type { FileSent } from './send-unsent.ts'

/** Sends the bytes of a file that a command names, where this phone still holds them; else they arrived long ago. */
export async function sendNamedFile(sha256: Sha256): Promise<FileSent> {
  const sent = await sendWaitingFile(sha256)
  switch (sent.is) {
    case 'sent':
      return { is: 'there' }
    case 'waits':
      return { is: 'waits' }
    case 'refused':
      return { is: 'refused', message: sent.message }
  }
}
