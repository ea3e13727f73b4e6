import { memo } from 'react'
import { headsOf } from '@/lib/plan/drawn/heads.ts'
import type { Wall } from '@/lib/plan/drawn/wall.ts'
import { dayOfMonth, monthAndYear } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'
import { rem } from './rem.ts'

/** A month of which less is shown has no room for its name. */
const LEAST_PX = 76

/** The months and the days over the wall. */
export const WallHead = memo(function WallHead({
  wall,
  place,
}: {
  readonly wall: Wall
  readonly place: Place
}) {
  const { months, days } = headsOf(wall)
  return (
    <div className="drawn-head" aria-hidden="true">
      {months.map(({ date, left, width }) => (
        <div key={date} className="drawn-month" style={{ left: rem(left), width: rem(width) }}>
          <b>{width < LEAST_PX ? '' : monthAndYear(date, place)}</b>
        </div>
      ))}
      {days.map(({ date, left, width }) => (
        <span key={date} className="drawn-day" style={{ left: rem(left), width: rem(width) }}>
          <b>{dayOfMonth(date, place, wall.zoom === 'day')}</b>
        </span>
      ))}
    </div>
  )
})
