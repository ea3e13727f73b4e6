import type { CivilDate } from '../../record/scalars.ts'
import { DAY_PX, type Wall } from './wall.ts'

/** A word over the days: where it begins, how long it holds. */
export interface DayHead {
  readonly date: CivilDate
  readonly left: number
  readonly width: number
}

/** The months over a wall, and under them the days, or the weeks by their Mondays. */
export function headsOf({ days, zoom }: Pick<Wall, 'days' | 'zoom'>): {
  readonly months: readonly DayHead[]
  readonly days: readonly DayHead[]
} {
  const px = DAY_PX[zoom]
  const each = zoom === 'day' ? 1 : 7
  const heads = days.dates.flatMap((date, n): DayHead[] =>
    n % each === 0 ? [{ date, left: n * px, width: each * px }] : [],
  )
  const months = [...Map.groupBy(days.dates.entries(), ([, date]) => date.slice(0, 7)).values()]
  return {
    days: heads,
    months: months.flatMap((month): DayHead[] => {
      const [first] = month
      return first === undefined
        ? []
        : [{ date: first[1], left: first[0] * px, width: month.length * px }]
    }),
  }
}
