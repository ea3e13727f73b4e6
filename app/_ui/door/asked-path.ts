import { headers } from 'next/headers'
import { PATH_HEADER } from '@/lib/command/path-header.ts'

/** The address that was asked for, so that sign-in can lead back to it. */
export async function askedPath(): Promise<string> {
  const asked = new URL((await headers()).get(PATH_HEADER) ?? '/', 'http://here')
  // Next's own fetch of a page carries this; the address of a person doesn't.
  asked.searchParams.delete('_rsc')
  return `${asked.pathname}${asked.search}`
}
