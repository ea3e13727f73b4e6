import type { Context } from 'hono'
import { FILE_MOST_BYTES, type FileFault } from '../files.ts'
import { Refused } from './door.ts'

/** The bytes of an upload; a body that isn't there ends at once. */
export const bytesOf = (context: Context): ReadableStream<Uint8Array> =>
  context.req.raw.body ?? new Blob().stream()

/** How many bytes a request says it brings; where it doesn't say, as many as a file may have. */
export function lengthOf(context: Context): number {
  const said = Number(context.req.header('content-length') ?? FILE_MOST_BYTES)
  return Math.min(Number.isNaN(said) ? FILE_MOST_BYTES : said, FILE_MOST_BYTES)
}

/** The answer to an upload. @throws {Refused} where it was not kept, with the way out */
export function kept(context: Context, fault: FileFault | null): Response {
  switch (fault) {
    case null:
      return context.json({}, 201)
    case 'too large':
      throw new Refused(
        413,
        'file',
        `A file has at most ${FILE_MOST_BYTES / 1e6} MB. Send a smaller picture.`,
      )
    case 'unknown type':
      throw new Refused(415, 'file', 'Pictures (JPEG, PNG, WebP) and PDF are kept.')
    case 'another file':
      throw new Refused(
        400,
        'file',
        'The bytes that came are not those that were announced. Send it again.',
      )
  }
}
