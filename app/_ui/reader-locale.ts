import { headers } from 'next/headers'

/** Until the reader's browser says otherwise. */
const DEFAULT = 'en-GB'

/** The reader's first locale that dates and figures can be written in. */
export async function readerLocale(): Promise<string> {
  const accepted = (await headers()).get('accept-language') ?? ''
  for (const part of accepted.split(',')) {
    const tag = part.split(';')[0]?.trim() ?? ''
    try {
      const [found] = Intl.DateTimeFormat.supportedLocalesOf(tag)
      if (found !== undefined) return found
    } catch {
      // Not a language tag: the next one may be.
    }
  }
  return DEFAULT
}
