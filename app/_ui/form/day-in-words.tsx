'use client'
import { useLocale, useNow } from '@/lib/live/live-provider.tsx'
import { CivilDate } from '@/lib/record/scalars.ts'
import { day } from '@/lib/words/dates.ts'

/** A day that was chosen, as we write it: each browser's own field orders its figures by where it comes from. */
export function DayInWords({ value }: { readonly value: string }) {
  const place = { locale: useLocale(), timeZone: 'UTC', now: useNow() }
  const [date, time] = value.split('T')
  const chosen = CivilDate.safeParse(date)
  if (!chosen.success) return null
  return (
    <p className="hint">
      <b>
        {day(chosen.data, place)}
        {time === undefined ? '' : `, ${time}`}
      </b>
    </p>
  )
}
