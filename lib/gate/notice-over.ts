import type { Hold } from '../record/entities/work.ts'
import type { Instant } from '../record/scalars.ts'
import { daysAfter, instantAt, wallTime } from '../record/zoned-time.ts'

const SATURDAY = 6

/** Saturdays and Sundays are no working days; a shop's own closures aren't known to the other party. */
const isWorkday = (date: string): boolean =>
  new Date(`${date}T00:00:00.000Z`).getUTCDay() % SATURDAY !== 0

/**
 * Until when a witness who was invited is waited for: the visit, and never less than the notice agreed, in working days by the project's clock. Null where
 * nobody was invited before the visit.
 */
export function noticeOver(point: Hold, zone: string): Instant | null {
  const { invitedAt, visitAt } = point
  if (invitedAt === null || visitAt === null || invitedAt >= visitAt) return null
  const [first = '', time = ''] = wallTime(invitedAt, zone).split('T')
  let date = first
  for (let left = point.noticeDays; left > 0; ) {
    date = daysAfter(date, 1)
    if (isWorkday(date)) left--
  }
  const over = point.noticeDays === 0 ? invitedAt : instantAt(`${date}T${time}`, zone)
  return over === null || over < visitAt ? visitAt : over
}
