import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { theClock, workingCalendar } from '../shop/working-calendar.ts'
import { type Activity, criticalPath, type Tie } from './critical-path.ts'

const HOUR_MS = 3_600_000

/** Activities as arrows between events: each follows on all that end where it begins. A unit of time is an hour of the clock. */
function onArrows(arrows: readonly (readonly [number, number, number])[]) {
  const name = (from: number, to: number) => `${from}–${to}`
  const activities = arrows.map(
    ([from, to, hours]): Activity => ({
      id: name(from, to),
      hours,
      calendar: theClock,
      notBefore: 0,
    }),
  )
  const ties = arrows.flatMap(([from, to]) =>
    arrows
      .filter(([begins]) => begins === to)
      .map(([, end]): Tie => ({ from: name(from, to), to: name(to, end), lagMs: 0 })),
  )
  return criticalPath(activities, ties)
}

/** Earliest from and to, latest from and to, float: in hours. */
const timesOf = ({ timings }: ReturnType<typeof criticalPath>, id: string) => {
  const found = timings.get(id)
  if (found === undefined) throw new Error(`There is no ${id}.`)
  const { earliestFrom, earliestTo, latestFrom, latestTo, floatHours } = found
  return [earliestFrom, earliestTo, latestFrom, latestTo]
    .map((ms) => ms / HOUR_MS)
    .concat(floatHours)
}

describe('the critical path', () => {
  it('is that of a worked network of thirteen arrows, with every time and float that was printed for it', () => {
    // B. W. Taylor III, "Introduction to Management Science", solutions to the problems of the chapter "Project management",
    // problem 6: activity, time, ES, EF, LS, LF, slack; critical path 1-3-5-7-8-9.
    const printed = [
      [1, 2, 8, 0, 8, 1, 9, 1],
      [1, 3, 10, 0, 10, 0, 10, 0],
      [1, 4, 9, 0, 9, 6, 15, 6],
      [2, 5, 6, 8, 14, 9, 15, 1],
      [2, 6, 4, 8, 12, 16, 20, 8],
      [3, 5, 5, 10, 15, 10, 15, 0],
      [4, 5, 0, 9, 9, 15, 15, 6],
      [4, 7, 7, 9, 16, 20, 27, 11],
      [5, 7, 12, 15, 27, 15, 27, 0],
      [5, 8, 15, 15, 30, 16, 31, 1],
      [6, 9, 18, 12, 30, 20, 38, 8],
      [7, 8, 4, 27, 31, 27, 31, 0],
      [8, 9, 7, 31, 38, 31, 38, 0],
    ] as const
    const found = onArrows(printed.map(([from, to, hours]) => [from, to, hours]))
    for (const [from, to, , ...times] of printed) {
      expect(timesOf(found, `${from}–${to}`)).toEqual(times)
    }
    expect(found.run).toEqual(['1–3', '3–5', '5–7', '7–8', '8–9'])
    expect(found.end).toBe(38 * HOUR_MS)
  })

  it('is that of the contractor’s fourteen jobs: 44 weeks, and the slack of each', () => {
    // F. S. Hillier and G. J. Lieberman, "Introduction to Operations Research", chapter on PERT/CPM; from memory.
    const jobs = [
      ['A', 2, '', 0],
      ['B', 4, 'A', 0],
      ['C', 10, 'B', 0],
      ['D', 6, 'C', 4],
      ['E', 4, 'C', 0],
      ['F', 5, 'E', 0],
      ['G', 7, 'D', 4],
      ['H', 9, 'EG', 4],
      ['I', 7, 'C', 2],
      ['J', 8, 'FI', 0],
      ['K', 4, 'J', 1],
      ['L', 5, 'J', 0],
      ['M', 2, 'H', 4],
      ['N', 6, 'KL', 0],
    ] as const
    const found = criticalPath(
      jobs.map(([id, hours]) => ({ id, hours, calendar: theClock, notBefore: 0 })),
      jobs.flatMap(([to, , before]) => [...before].map((from) => ({ from, to, lagMs: 0 }))),
    )
    expect(found.end).toBe(44 * HOUR_MS)
    expect(found.run.join('')).toBe('ABCEFJLN')
    expect(jobs.map(([id]) => [id, found.timings.get(id)?.floatHours])).toEqual(
      jobs.map(([id, , , slack]) => [id, slack]),
    )
  })

  it('lets cure run over the weekend, and work wait for Monday', () => {
    const shop = workingCalendar({ opensAt: '08:00', closesAt: '18:00', timeZone: 'UTC' })
    const friday = Date.UTC(2026, 11, 4, 8)
    const job = { calendar: shop, hours: 10, notBefore: friday }
    const { timings } = criticalPath(
      [
        { id: 'lacquer', ...job },
        { id: 'flat and polish', ...job },
      ],
      [{ from: 'lacquer', to: 'flat and polish', lagMs: 48 * HOUR_MS }],
    )
    expect(timings.get('flat and polish')).toMatchObject({
      earliestFrom: Date.UTC(2026, 11, 7, 8),
      earliestTo: Date.UTC(2026, 11, 7, 18),
      drivenBy: 'lacquer',
    })
    // 48 hours from any time on Friday are over before Monday: the lacquer could be no later, for the shop is shut.
    expect(timings.get('lacquer')?.floatHours).toBe(0)
  })

  it('names what ends last alone where it waits for a day, not for work', () => {
    const job = { calendar: theClock, hours: 1 }
    const { run, timings } = criticalPath(
      [
        { id: 'strip', ...job, notBefore: 0 },
        { id: 'glass', ...job, notBefore: 100 * HOUR_MS },
      ],
      [{ from: 'strip', to: 'glass', lagMs: 0 }],
    )
    expect(run).toEqual(['glass'])
    expect(timings.get('strip')?.floatHours).toBe(99)
  })

  it('has nothing to say where there is nothing to do', () => {
    expect(criticalPath([], [])).toEqual({ timings: new Map(), run: [], end: null })
  })

  it('comes to an end even where work waits for itself', () => {
    const job = { calendar: theClock, hours: 2, notBefore: 0 }
    const ties = [
      { from: 'a', to: 'b', lagMs: 0 },
      { from: 'b', to: 'a', lagMs: 0 },
    ]
    const { run, end } = criticalPath(
      [
        { id: 'a', ...job },
        { id: 'b', ...job },
      ],
      ties,
    )
    expect(run.length).toBeGreaterThan(0)
    expect(end).not.toBeNull()
  })

  const calendars = [
    theClock,
    workingCalendar({ opensAt: '08:00', closesAt: '18:00', timeZone: 'Europe/London' }),
    workingCalendar({ opensAt: '07:30', closesAt: '16:00', timeZone: 'Europe/London' }),
  ]
  const start = Date.UTC(2026, 10, 25, 9)
  /** Up to 30 pieces of work, each waiting for some of those before it. */
  const anyNetwork = fc
    .array(
      fc.record({
        hours: fc.nat(80),
        calendar: fc.constantFrom(...calendars),
        days: fc.nat(60),
        before: fc.array(fc.record({ back: fc.integer({ min: 1, max: 9 }), lag: fc.nat(100) }), {
          maxLength: 3,
        }),
      }),
      { minLength: 1, maxLength: 30 },
    )
    .map((jobs) => ({
      activities: jobs.map(
        ({ hours, calendar, days }, n): Activity => ({
          id: `${n}`,
          hours,
          calendar,
          notBefore: start + (days > 50 ? days * 24 * HOUR_MS : 0),
        }),
      ),
      ties: jobs.flatMap(({ before }, n) =>
        before
          .filter(({ back }) => back <= n)
          .map(
            ({ back, lag }): Tie => ({
              from: `${n - back}`,
              to: `${n}`,
              lagMs: lag * HOUR_MS,
            }),
          ),
      ),
    }))

  it('begins nothing before its time, nor before what it waits for and the lag', () => {
    fc.assert(
      fc.property(anyNetwork, ({ activities, ties }) => {
        const { timings, end } = criticalPath(activities, ties)
        const of = (id: string) => timings.get(id) ?? expect.fail(id)
        for (const { id, notBefore } of activities) {
          const timing = of(id)
          expect(timing.earliestFrom).toBeGreaterThanOrEqual(notBefore)
          expect(timing.earliestTo).toBeGreaterThanOrEqual(timing.earliestFrom)
          expect(timing.latestFrom).toBeGreaterThanOrEqual(timing.earliestFrom)
          expect(timing.latestTo).toBeLessThanOrEqual(end ?? 0)
          expect(timing.floatHours).toBeGreaterThanOrEqual(0)
        }
        for (const { from, to, lagMs } of ties) {
          expect(of(to).earliestFrom).toBeGreaterThanOrEqual(of(from).earliestTo + lagMs)
          expect(of(to).latestFrom).toBeGreaterThanOrEqual(of(from).latestTo + lagMs)
        }
      }),
    )
  })

  it('moves no end where everything begins at its latest', () => {
    fc.assert(
      fc.property(anyNetwork, ({ activities, ties }) => {
        const { timings, end } = criticalPath(activities, ties)
        const late = activities.map((activity) => ({
          ...activity,
          notBefore: timings.get(activity.id)?.latestFrom ?? 0,
        }))
        expect(criticalPath(late, ties).end).toBe(end)
      }),
    )
  })

  it('runs unbroken from what begins by itself to what ends last', () => {
    fc.assert(
      fc.property(anyNetwork, ({ activities, ties }) => {
        const { timings, run, end } = criticalPath(activities, ties)
        expect(timings.get(run.at(-1) ?? '')?.earliestTo).toBe(end)
        expect(timings.get(run[0] ?? '')?.drivenBy).toBeNull()
        for (const [n, id] of run.entries()) {
          const before = run[n - 1]
          if (before === undefined) continue
          expect(ties.some(({ from, to }) => from === before && to === id)).toBe(true)
          expect(timings.get(id)?.drivenBy).toBe(before)
        }
      }),
    )
  })

  it('holds no float at all where all work by the clock', () => {
    fc.assert(
      fc.property(anyNetwork, ({ activities, ties }) => {
        const byTheClock = activities.map((one) => ({ ...one, calendar: theClock }))
        const { timings, run } = criticalPath(byTheClock, ties)
        for (const id of run) expect(timings.get(id)?.floatHours).toBe(0)
      }),
    )
  })

  it('gives the same answer to the same question', () => {
    fc.assert(
      fc.property(anyNetwork, ({ activities, ties }) => {
        expect(criticalPath(activities, ties)).toEqual(criticalPath(activities, ties))
      }),
    )
  })
})
