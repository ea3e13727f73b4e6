import type { Shop } from '../record/entities/people.ts'

const DAY_MS = 86_400_000
const minutesOf = (time: string): number => Number(time.slice(0, 2)) * 60 + Number(time.slice(3))

/**
 * When so many working hours are over, by the clock on the wall: at closing time of the last working day that they need.
 * `from` and the result are `2026-11-25T08:00`; Saturdays and Sundays are off (the shop's own closures aren't known yet).
 */
export function workEnds(
  from: string,
  hours: number,
  { opensAt, closesAt }: Pick<Shop, 'opensAt' | 'closesAt'>,
): string {
  const aDay = Math.max(60, minutesOf(closesAt) - minutesOf(opensAt))
  let day = Date.parse(`${from.slice(0, 10)}T00:00:00.000Z`)
  let left = hours * 60
  const today = minutesOf(closesAt) - Math.max(minutesOf(opensAt), minutesOf(from.slice(11)))
  if (isWorkingDay(day)) left -= Math.max(0, today)
  while (left > 0 || !isWorkingDay(day)) {
    day += DAY_MS
    if (isWorkingDay(day)) left -= aDay
  }
  return `${new Date(day).toISOString().slice(0, 10)}T${closesAt}`
}

function isWorkingDay(ms: number): boolean {
  const weekday = new Date(ms).getUTCDay()
  return weekday !== 0 && weekday !== 6
}
