import type { WorkingCalendar } from '../shop/working-calendar.ts'
import { inOrder } from './in-order.ts'

/** A piece of work to come. Times are milliseconds since 1970. */
export interface Activity {
  readonly id: string
  /** Working hours by its own calendar. */
  readonly hours: number
  readonly calendar: WorkingCalendar
  /** It can't begin sooner, whatever it waits for. */
  readonly notBefore: number
}

/** `to` begins once `from` is over and so much more has run by the clock. */
export interface Tie {
  readonly from: string
  readonly to: string
  readonly lagMs: number
}

/** When an activity can and must be done. */
export interface Timing {
  readonly earliestFrom: number
  readonly earliestTo: number
  readonly latestFrom: number
  readonly latestTo: number
  /** Working hours by which it may slip while the end stays. */
  readonly floatHours: number
  /** The activity that it begins on the heels of; null where that is its own `notBefore`. */
  readonly drivenBy: string | null
}

export interface CriticalPath {
  readonly timings: ReadonlyMap<string, Timing>
  /** From what begins on its own to what ends last, each driven by the one before it. Where several are, the least float wins. */
  readonly run: readonly string[]
  /** When the last of it ends; null where there is nothing to do. */
  readonly end: number | null
}

/**
 * The critical path method: earliest times by a forward pass, latest by a backward one, total float between them
 * (J. E. Kelley and M. R. Walker, "Critical-path planning and scheduling", 1959), with working calendars and lags by the clock.
 * Under several calendars a chain that sets the end may hold some hours of float where it waits for somebody's doors to open;
 * so the run is the chain of what drives what. Activities in a circle, which no record holds, wait for none of it.
 */
export function criticalPath(
  activities: readonly Activity[],
  allTies: readonly Tie[],
): CriticalPath {
  const byId = new Map(activities.map((activity) => [activity.id, activity]))
  const order = inOrder(
    activities.map(({ id }) => id),
    allTies,
  )
  const place = new Map(order.map((id, n) => [id, n]))
  const ties = allTies.filter(({ from, to }) => (place.get(from) ?? 0) < (place.get(to) ?? -1))
  const into = Map.groupBy(ties, ({ to }) => to)
  const outOf = Map.groupBy(ties, ({ from }) => from)

  const early = new Map<string, { readonly from: number; readonly to: number }>()
  for (const id of order) {
    const activity = byId.get(id)
    if (activity === undefined) continue
    const { calendar, hours, notBefore } = activity
    const free = (into.get(id) ?? []).reduce(
      (latest, tie) => Math.max(latest, (early.get(tie.from)?.to ?? notBefore) + tie.lagMs),
      notBefore,
    )
    const from = calendar.opensFrom(free)
    early.set(id, { from, to: calendar.after(from, hours) })
  }

  const end = [...early.values()].reduce((latest, { to }) => Math.max(latest, to), -Infinity)
  const timings = new Map<string, Timing>()
  for (const id of order.toReversed()) {
    const activity = byId.get(id)
    const first = early.get(id)
    if (activity === undefined || first === undefined) continue
    const { calendar, hours } = activity
    const latestTo = (outOf.get(id) ?? []).reduce(
      (soonest, tie) => Math.min(soonest, (timings.get(tie.to)?.latestFrom ?? end) - tie.lagMs),
      end,
    )
    // Where doors are shut at both ends the same hours can't lie earlier than at the earliest.
    const latestFrom = Math.max(first.from, calendar.before(latestTo, hours))
    timings.set(id, {
      earliestFrom: first.from,
      earliestTo: first.to,
      latestFrom,
      latestTo: Math.max(first.to, latestTo),
      floatHours: calendar.between(first.from, latestFrom),
      drivenBy: null,
    })
  }

  const leastFloat = (ids: readonly string[]): string | null =>
    ids.reduce<string | null>((best, id) => {
      const less = (timings.get(id)?.floatHours ?? 0) < (timings.get(best ?? '')?.floatHours ?? 0)
      return best === null || less ? id : best
    }, null)
  for (const [id, timing] of timings) {
    const activity = byId.get(id)
    if (activity === undefined) continue
    const heels = (into.get(id) ?? []).filter(
      ({ from, lagMs }) =>
        (early.get(from)?.to ?? 0) + lagMs >= activity.notBefore &&
        activity.calendar.opensFrom((early.get(from)?.to ?? 0) + lagMs) === timing.earliestFrom,
    )
    timings.set(id, { ...timing, drivenBy: leastFloat(heels.map(({ from }) => from)) })
  }
  const last = leastFloat(order.filter((id) => early.get(id)?.to === end))
  const run: string[] = []
  for (let id = last; id !== null; id = timings.get(id)?.drivenBy ?? null) run.unshift(id)
  return { timings, run, end: last === null ? null : end }
}
