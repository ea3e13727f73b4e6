'use client'
import { useLocale, useNow } from '@/lib/live/live-provider.tsx'
import type { Place } from '@/lib/words/reader.ts'

/** No record's own zone: what is listed over all of them is read by the phone's clock. */
export function usePhonePlace(): Place {
  const locale = useLocale()
  const now = useNow()
  return { locale, now, timeZone: new Intl.DateTimeFormat().resolvedOptions().timeZone }
}
