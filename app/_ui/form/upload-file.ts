import * as z from 'zod/mini'
import { askServer } from '@/app/_ui/door/ask-server.ts'
import { Sha256 } from '@/lib/record/scalars.ts'

/** Greatest file that the server keeps, in bytes. */
const MOST_BYTES = 30_000_000

export type Uploaded =
  | { readonly ok: true; readonly sha256: Sha256 }
  | { readonly ok: false; readonly message: string }

async function sha256Of(bytes: ArrayBuffer): Promise<Sha256> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Sha256.parse(Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join(''))
}

/** Sends a file to `folder` (`/api/projects/…/files`), named by what is in it. Equal files are kept once. */
export async function uploadFile(folder: string, file: File): Promise<Uploaded> {
  if (file.size > MOST_BYTES)
    return { ok: false, message: `${file.name} is larger than 30 MB. Take it again, smaller.` }
  const bytes = await file.arrayBuffer()
  const sha256 = await sha256Of(bytes)
  const answer = await askServer(z.unknown(), `${folder}/${sha256}`, {
    method: 'PUT',
    headers: { 'content-type': 'application/offset+octet-stream' },
    body: bytes,
  })
  return answer.ok ? { ok: true, sha256 } : { ok: false, message: answer.message }
}
