import { Metadata } from '@tus/server'
import type { Context } from 'hono'
import type { Sha256 } from '../../record/scalars.ts'
import { FILE_MOST_BYTES } from '../files.ts'
import { type UploadFor, UploadMetadata, type Uploads } from '../uploads.ts'
import { orNotFound, Refused } from './door.ts'
import { kept } from './kept.ts'

/** What stands at the door of an upload that begins. */
export interface Beginning {
  /** Whether this sender has that file there already: then no byte of it is sent. */
  readonly isKept: (sha256: Sha256) => Promise<boolean>
  /** Counts its bytes. @throws {TooOften} */
  readonly count: (bytes: number) => Promise<void>
}

/** Begins an upload; answers 200 and `kept` where the file is there already. @throws {Refused} before any byte, where it would be */
export async function beginUpload(
  context: Context,
  uploads: Uploads,
  upload: UploadFor,
  { isKept, count }: Beginning,
): Promise<Response> {
  const { sha256 } = announced(context.req.header('upload-metadata'))
  const length = Number(context.req.header('upload-length'))
  if (!Number.isInteger(length))
    throw new Refused(400, 'upload-length', 'Say in Upload-Length how many bytes come.')
  if (length > FILE_MOST_BYTES) return kept(context, 'too large')
  if (length < 1) return kept(context, 'unknown type')
  if (await isKept(sha256)) return context.json({ kept: true }, 200)
  await count(length)
  return goOnWithUpload(context, uploads, upload)
}

/** Goes on with an upload: how far it is, the next bytes, or given up. */
export async function goOnWithUpload(
  context: Context,
  uploads: Uploads,
  upload: UploadFor,
): Promise<Response> {
  const { response, fault } = orNotFound(await uploads.answer(context.req.raw, upload))
  if (fault !== null) return kept(context, fault)
  const headers = new Headers(response.headers)
  // Only our own pages send here: no other site is told anything.
  for (const name of [...headers.keys()]) {
    if (name.startsWith('access-control-')) headers.delete(name)
  }
  if (response.ok) return new Response(response.body, { status: response.status, headers })
  headers.delete('content-length')
  headers.set('content-type', 'application/json')
  const error = { field: 'upload', message: wordsFor(response.status) }
  return new Response(JSON.stringify({ error }), { status: response.status, headers })
}

function announced(header: string | undefined) {
  try {
    return UploadMetadata.parse(Metadata.parse(header))
  } catch {
    const message = 'Say in Upload-Metadata which file comes: sha256, in 64 hexadecimal digits.'
    throw new Refused(400, 'sha256', message)
  }
}

function wordsFor(status: number): string {
  switch (status) {
    case 404:
    case 410:
      return 'This upload is not here any more. Begin it anew.'
    case 409:
      return 'It stopped elsewhere. Ask how far it is, and go on from there.'
    case 413:
      return 'More bytes came than were announced. Begin it anew.'
    default:
      return 'This is no step of an upload. Begin it anew.'
  }
}
