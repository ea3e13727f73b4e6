import type { KeptFile } from '../files.ts'

/** A kept file as it is. Its name is what is in it, so it never changes; and a document of somebody's runs nothing here. */
export const shown = async ({ open, type, bytes }: KeptFile): Promise<Response> =>
  new Response(await open(), {
    headers: {
      'content-type': type,
      'content-length': String(bytes),
      'cache-control': 'private, max-age=31536000, immutable',
      'content-security-policy': "sandbox; default-src 'none'",
    },
  })
