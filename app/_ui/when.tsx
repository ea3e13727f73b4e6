import type { CivilDate, Instant } from '@/lib/record/scalars.ts'
import { day, moment } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'

/** A day, or an instant's day, readable by machines too. */
export const Day = ({
  when,
  place,
}: {
  readonly when: Instant | CivilDate
  readonly place: Place
}) => (
  <time className="n" dateTime={when}>
    {day(when, place)}
  </time>
)

/** A day and its time; of today only the time. */
export const Moment = ({ when, place }: { readonly when: Instant; readonly place: Place }) => (
  <time className="n" dateTime={when}>
    {moment(when, place)}
  </time>
)
