import { DetailedError, type FileReader, Upload } from 'tus-js-client'
import type { WaitingFile } from '../phone/phone-store.ts'
import { fetchStack } from './fetch-stack.ts'

/** One piece of an upload, in bytes: some seconds of one bar of signal, after which it is told how far it is. */
const PIECE_BYTES = 256 * 1024
/** A hiccup of the line is sat out for as long, in ms; after that the file waits for the next sending. */
const AGAIN_AFTER_MS = [300, 1500, 4000]

/** How an upload ended: `status` 0 where no answer came. */
export type UploadEnd =
  | { readonly ok: true }
  | { readonly ok: false; readonly status: number; readonly message: string }

/** Uploads by the tus protocol, or goes on with what it began before. */
export function uploadFile(
  { folder, sha256, name, upload: begun }: WaitingFile,
  bytes: Blob,
  tell: { readonly began: (address: string) => void; readonly progress: (sent: number) => void },
): Promise<UploadEnd> {
  const endpoint = new URL(`${folder.replace(/\/files$/, '')}/uploads`, location.origin).href
  return new Promise((end, fail) => {
    const upload: Upload = new Upload(bytes, {
      endpoint,
      uploadUrl: begun === null ? null : new URL(begun, endpoint).href,
      metadata: { sha256, name },
      chunkSize: PIECE_BYTES,
      retryDelays: AGAIN_AFTER_MS,
      // It lies on the phone's shelf, beside the bytes.
      storeFingerprintForResuming: false,
      fingerprint: async () => sha256,
      fileReader: blobReader,
      httpStack: fetchStack,
      onShouldRetry: ({ originalResponse }) => isHiccup(originalResponse?.getStatus() ?? 0),
      onUploadUrlAvailable: () => {
        if (upload.url !== null) tell.began(new URL(upload.url).pathname)
      },
      onProgress: (sent, all) => tell.progress(all === 0 ? 0 : sent / all),
      onSuccess: () => end({ ok: true }),
      onError: (error) => {
        if (error instanceof DetailedError) end(endOf(error))
        else fail(error)
      },
    })
    upload.start()
  })
}

/** No answer, or two at once: another try may do. */
const isHiccup = (status: number): boolean =>
  status === 0 || status === 409 || status === 423 || status >= 500

/** Reads pieces of what lies on the shelf. */
const blobReader: FileReader = {
  openFile: async (blob: Blob) => ({
    size: blob.size,
    slice: async (start, end) => ({ value: blob.slice(start, end), done: end >= blob.size }),
    close: () => undefined,
  }),
}

function endOf({ originalResponse: answer }: DetailedError): UploadEnd {
  // Where the file is there already no upload begins, and so it has no address.
  if (answer?.getStatus() === 200) return { ok: true }
  if (answer === null) return { ok: false, status: 0, message: '' }
  return { ok: false, status: answer.getStatus(), message: messageIn(answer.getBody()) }
}

function messageIn(body: string): string {
  try {
    const said: { readonly error?: { readonly message?: string } } = JSON.parse(body)
    return said.error?.message ?? ''
  } catch {
    return ''
  }
}
