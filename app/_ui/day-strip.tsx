import { type CivilDate, Instant } from '@/lib/record/scalars.ts'
import { civilDateIn, daysAfter, instantAt } from '@/lib/record/zoned-time.ts'
import { inRows, onStrip } from '@/lib/shop/day-lanes.ts'
import type { Span } from '@/lib/shop/span.ts'
import { day } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'

/** One thing in a bay for a while: a slot, a window. `sentence` says all of it. */
export interface OnFloor extends Span {
  readonly id: string
  readonly words: string
  readonly sentence: string
  readonly look: 'agreed' | 'asked' | 'free'
  readonly href?: string
}
export interface Lane {
  readonly id: string
  readonly name: string
  readonly things: readonly OnFloor[]
}

/** The days from `from` on, as civil dates. */
export const daysFrom = (from: string, count: number): readonly CivilDate[] =>
  Array.from({ length: count }, (_, n) => daysAfter(from, n))

/** The instants at which those days begin in `zone`, and that at which the last ends. */
export function dayStarts(days: readonly string[], zone: string): readonly Instant[] {
  const last = days.at(-1)
  const all = last === undefined ? [] : [...days, daysAfter(last, 1)]
  return all.flatMap((date) => instantAt(`${date}T00:00`, zone) ?? [])
}

/** A letter for each thing on the strip, in the order of its lanes: it stands where there is no room for words. */
function lettersOf(
  lanes: readonly Lane[],
  starts: readonly Instant[],
): ReadonlyMap<string, string> {
  const drawn = lanes.flatMap(({ things }) => inTime(things, starts))
  return new Map(drawn.map(({ id }, n) => [id, letter(n)]))
}

const letter = (n: number): string =>
  (n < 26 ? '' : letter(Math.floor(n / 26) - 1)) + String.fromCharCode(65 + (n % 26))

const inTime = (things: readonly OnFloor[], starts: readonly Instant[]): readonly OnFloor[] =>
  things
    .filter((thing) => onStrip(thing, starts) !== null)
    .toSorted((a, b) => a.from.localeCompare(b.from))

/** Columns of a day: a slot is drawn to the hour. */
const COLUMNS = 24
const LOOKS = { agreed: 'slot', asked: 'slot slot-claim', free: 'slot slot-free' } as const

/** Bays as chalk lanes over some days. `each` names every so many days on the strip. The list under it says the same in words. */
export function DayStrip({
  lanes,
  days,
  place,
  each = 1,
}: {
  readonly lanes: readonly Lane[]
  readonly days: readonly CivilDate[]
  readonly place: Place
  readonly each?: number
}) {
  const starts = dayStarts(days, place.timeZone)
  const letters = lettersOf(lanes, starts)
  const today = civilDateIn(place.now, place.timeZone)
  const now = onStrip({ from: place.now, to: later(place.now) }, starts)
  const columns = { gridTemplateColumns: `repeat(${days.length * COLUMNS}, minmax(0, 1fr))` }
  return (
    <div aria-hidden="true">
      <div className="lane lane-days">
        <span className="lane-name" />
        <div className="strip" style={columns}>
          {days.map((date, n) =>
            n % each === 0 ? (
              <b
                key={date}
                className={date === today ? 'strip-today' : ''}
                style={{
                  gridColumn: `${n * COLUMNS + 1} / span ${Math.min(each, days.length - n) * COLUMNS}`,
                }}
              >
                {each === 1 ? day(date, place) : dayAndMonth(date, place.locale)}
              </b>
            ) : null,
          )}
        </div>
      </div>
      {lanes.map((lane) => (
        <div key={lane.id} className="lane">
          <span className="lane-name">{lane.name}</span>
          <div className="strip strip-bay" style={columns}>
            {now !== null && (
              <i
                className="strip-now"
                style={{ gridColumn: `${Math.floor(now.from * COLUMNS) + 1} / span 1` }}
              />
            )}
            {inRows(lane.things).flatMap((row, y) =>
              row.flatMap((thing) => {
                const lies = onStrip(thing, starts)
                if (lies === null) return []
                const begin = Math.floor(lies.from * COLUMNS) + 1
                const end = Math.max(begin + 1, Math.ceil(lies.to * COLUMNS) + 1)
                return (
                  <span
                    key={thing.id}
                    className={LOOKS[thing.look]}
                    style={{ gridColumn: `${begin} / ${end}`, gridRow: y + 1 }}
                  >
                    <b className="slot-letter">{letters.get(thing.id)}</b>
                    <span className="slot-words">{thing.words}</span>
                  </span>
                )
              }),
            )}
          </div>
        </div>
      ))}
    </div>
  )
}

/** `23 Nov`: where every day named is a Monday, the weekday says nothing. */
const dayAndMonth = (date: CivilDate, locale: string): string =>
  new Intl.DateTimeFormat(locale, { day: 'numeric', month: 'short', timeZone: 'UTC' }).format(
    Date.parse(date),
  )

const later = (instant: Instant): Instant =>
  Instant.parse(new Date(Date.parse(instant) + 60_000).toISOString())

/** What the strip draws, as a list: for ears, for thin screens, and to press. */
export function DayList({
  lanes,
  days,
  place,
  nothing,
}: {
  readonly lanes: readonly Lane[]
  readonly days: readonly CivilDate[]
  readonly place: Place
  readonly nothing: string
}) {
  const starts = dayStarts(days, place.timeZone)
  const letters = lettersOf(lanes, starts)
  return (
    <dl className="stack tight">
      {lanes.map((lane) => {
        const things = inTime(lane.things, starts)
        return (
          <div key={lane.id} className="stack tight">
            <dt>
              <b>{lane.name}</b>
            </dt>
            {things.length === 0 && <dd className="soft">{nothing}</dd>}
            {things.map((thing) => (
              <dd key={thing.id} className="lettered">
                <b aria-hidden="true">{letters.get(thing.id)}</b>
                {thing.href === undefined ? (
                  <span>{thing.sentence}</span>
                ) : (
                  <a className="row-link" href={thing.href}>
                    {thing.sentence}
                  </a>
                )}
              </dd>
            ))}
          </div>
        )
      })}
    </dl>
  )
}
