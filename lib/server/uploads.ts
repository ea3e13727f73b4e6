import { createHash } from 'node:crypto'
import { mkdirSync, openAsBlob } from 'node:fs'
import { join } from 'node:path'
import { FileStore } from '@tus/file-store'
import { Server } from '@tus/server'
import * as z from 'zod/mini'
import type { PersonId, ProjectId } from '../record/ids.ts'
import { Sha256 } from '../record/scalars.ts'
import { FILE_MOST_BYTES, type FileFault, type Files } from './files.ts'
import { freshKey } from './fresh-key.ts'

/** An upload that nobody went on with is given up: the phone still has the bytes and begins anew. */
const LIFE_MS = 3 * 86_400_000
const CLEAN_EVERY_MS = 3_600_000

/** Whose upload it is, and where it goes. */
export interface UploadFor {
  readonly project: ProjectId
  /** In whose name it is kept. */
  readonly by: PersonId
  /** Who may go on with it: a person, or the link of a guest. */
  readonly sender: string
  /** Its folder's address, without a slash at its end. */
  readonly address: string
}

/** What an upload says of itself when it begins. */
export const UploadMetadata = z.object({ sha256: Sha256, name: z.optional(z.string()) })

/** What a request of the protocol came to. */
export interface UploadAnswer {
  readonly response: Response
  /** Why the file was not kept, though all its bytes came. */
  readonly fault: FileFault | null
}

/** Files on their way, in pieces, by the tus protocol 1.0: what was cut off goes on where it stopped. */
export type Uploads = {
  /** Answers POST, HEAD, PATCH, DELETE; null where it is no upload of this sender's. */
  readonly answer: (request: Request, upload: UploadFor) => Promise<UploadAnswer | null>
  readonly close: () => void
}

/** Uploads under a folder of their own in the data folder, until they are whole. */
export function openUploads(files: Files, dataDir: string): Uploads {
  const directory = join(dataDir, 'uploads')
  mkdirSync(directory, { recursive: true, mode: 0o700 })
  const store = new FileStore({ directory, expirationPeriodInMilliseconds: LIFE_MS })
  /** Whose each request is, for what the protocol's server asks meanwhile. */
  const asked = new WeakMap<Request, UploadFor>()
  const forWhom = (request: Request): UploadFor => {
    const upload = asked.get(request)
    if (upload === undefined) throw new Error('An upload that nobody asked for.')
    return upload
  }
  const tus = new Server({
    path: '/uploads',
    datastore: store,
    maxSize: FILE_MOST_BYTES,
    namingFunction: (request) => `${keyOf(forWhom(request))}-${freshKey()}`,
    generateUrl: (request, { id }) => `${forWhom(request).address}/${id}`,
  })
  const clean = () => tus.cleanUpExpiredUploads().catch((error: unknown) => console.error(error))
  void clean()
  const timer = setInterval(() => void clean(), CLEAN_EVERY_MS)
  timer.unref()

  /** Keeps a whole upload as a file that came in one piece is kept: its bytes are what was announced, and of a kind that is kept. */
  async function finish(id: string, { project, by }: UploadFor): Promise<FileFault | null> {
    const { metadata } = await store.getUpload(id)
    const { sha256 } = UploadMetadata.parse(metadata)
    const bytes = await openAsBlob(join(directory, id))
    const fault = await files.keep(project, sha256, bytes.stream(), by)
    await store.remove(id)
    return fault
  }
  /** Two that ask at once for the same upload wait for the same end. */
  const finishing = new Map<string, Promise<FileFault | null>>()
  const finishOnce = (id: string, upload: UploadFor): Promise<FileFault | null> => {
    const end = finishing.get(id) ?? finish(id, upload).finally(() => void finishing.delete(id))
    finishing.set(id, end)
    return end
  }

  return {
    async answer(request, upload) {
      const id = new URL(request.url).pathname.split('/').at(-1) ?? ''
      const begins = request.method === 'POST'
      const own = begins || id.startsWith(`${keyOf(upload)}-`)
      // What isn't whole is shown to nobody.
      if (!own || request.method === 'GET') return null
      asked.set(request, upload)
      const response = await tus.handleWeb(request)
      const offset = response.headers.get('upload-offset')
      if (begins || !response.ok || offset === null) return { response, fault: null }
      // HEAD too: the server may have stopped between the last byte and the keeping.
      const whole = finishing.has(id) || String((await store.getUpload(id)).size) === offset
      return { response, fault: whole ? await finishOnce(id, upload) : null }
    },
    close: () => clearInterval(timer),
  }
}

/** Stands before the name of each upload, so that nobody goes on with another's. */
const keyOf = ({ project, sender }: UploadFor): string =>
  createHash('sha256').update(`${project} ${sender}`).digest('hex').slice(0, 32)
