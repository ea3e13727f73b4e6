import * as z from 'zod/mini'
import { TimeZone } from '../record/scalars.ts'
import { instantAt } from '../record/zoned-time.ts'
import { chargedMinutes, chargeRule, hourlyRate, hoursAndMinutes, moneyFor } from './charge.ts'
import { measure, rows, words } from './fields.ts'
import { isFault } from './pennies.ts'
import {
  ask,
  asTyped,
  defineSum,
  type Fault,
  type FaultAnswer,
  fault,
  figure,
  refuse,
  result,
} from './sum.ts'

/** A longer attendance is asked about, in minutes. */
const LONG = 16 * 60
const CLOCK = /^([01]?\d|2[0-4]):([0-5]\d)$/
const WALL = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}$/

const Entry = z.strictObject({
  person: words('Who'),
  stage: z.optional(words('On stage')),
  in: words('In', '08:10; across midnight with its day, 2026-03-28T22:00.'),
  out: words('Out'),
  breaks: measure('Breaks', 'min', { least: 0, greatest: 600 }),
})
type Entry = z.infer<typeof Entry>

interface Attended {
  readonly entry: Entry
  readonly from: number
  readonly to: number
}

/** Attendances by the clock, several people's too, and what they come to. */
export const clockedHours = defineSum({
  name: 'clocked-hours',
  title: 'Hours by the clock',
  group: 'money and hours',
  formula:
    'minutes = out − in − breaks; hours = minutes ÷ 60; money = minutes × rate ÷ 60, to the penny',
  source: 'Arithmetic; common practice.',
  tolerance: 'To the minute and the penny; never charged from the decimal that is shown.',
  hazards: [],
  input: z.strictObject({
    entries: rows('Attendances', Entry, 'Two people for 3 hours are two rows and 6 hours.'),
    zone: z.optional(words('Time zone', 'Such as Europe/London; only where days are given.')),
    rule: chargeRule,
    rate: z.optional(hourlyRate),
  }),
  reckon({ entries, zone, rule, rate }, meant) {
    if (zone !== undefined && !TimeZone.safeParse(zone).success)
      return refuse(fault('zone', `Time zone: ${zone} is none. One such as Europe/London.`))
    const faults: Fault[] = []
    const attended = entries.map((entry, i) => attendance(entries, i, entry, zone, meant, faults))
    faults.push(...overlaps(attended))
    if (faults.length > 0) return refuse(...faults)
    const minutes = attended.map(({ entry, from, to }) => to - from - entry.breaks)
    const worked = minutes.reduce((sum, each) => sum + each, 0)
    const charged = minutes.reduce((sum, each) => sum + chargedMinutes(each, rule), 0)
    const money = rate === undefined ? null : moneyFor(charged, rate)
    if (money !== null && isFault(money)) return refuse(money)
    return result(
      [
        figure('worked', 'Worked', hoursAndMinutes(worked)),
        figure('hours', 'In decimals', worked / 60, 'h'),
        figure('minutes', 'Worked', worked, 'min', 0),
        ...(rule === 'none' ? [] : [figure('charged', 'Charged', charged, 'min', 0)]),
        ...(money === null ? [] : [figure('money', 'Money', money)]),
      ],
      {
        working: [
          ...attended.map(
            ({ entry, from, to }) =>
              `${entry.person}: ${to - from} − ${entry.breaks} = ${to - from - entry.breaks} min`,
          ),
          `Charged ${rule === 'none' ? 'by the minute' : `by ${rule}`}: ${charged} min`,
        ],
      },
    )
  },
})

function attendance(
  entries: readonly Entry[],
  index: number,
  entry: Entry,
  zone: string | undefined,
  meant: (field: string) => boolean,
  faults: Fault[],
): Attended {
  const at = (field: string) => `entries.${index}.${field}`
  const label = (of: string) => `Attendances, row ${index + 1}, ${of}`
  const typedAs = (change: Partial<Entry>) => ({
    entries: entries.map((each, i) => (i === index ? { ...each, ...change } : each)),
  })
  const from = minuteOf(at('in'), label('In'), entry.in, zone, faults, (time) =>
    typedAs({ in: time }),
  )
  const to = minuteOf(at('out'), label('Out'), entry.out, zone, faults, (time) =>
    typedAs({ out: time }),
  )
  if (from === null || to === null) return { entry, from: 0, to: 0 }
  if (WALL.test(entry.in.trim()) !== WALL.test(entry.out.trim()))
    faults.push(fault(at('out'), `${label('Out')}: both with their day, or neither.`))
  else if (to <= from)
    faults.push(
      fault(at('out'), `${label('Out')}: not after in. Across midnight give both with their day.`),
    )
  else if (!Number.isInteger(entry.breaks))
    faults.push(fault(at('breaks'), `${label('Breaks')}: whole minutes.`))
  else if (entry.breaks > to - from)
    faults.push(fault(at('breaks'), `${label('Breaks')}: longer than the attendance.`))
  else if (to - from > LONG && !meant(at('out')))
    faults.push(
      ask(
        at('out'),
        `${label('Out')}: ${hoursAndMinutes(to - from)} at a stretch. Is that right?`,
        [asTyped(at('out'), 'Yes, that long')],
      ),
    )
  return { entry, from, to }
}

/** Minutes since midnight, or since 1970 where the day is given; null where it is no time. */
function minuteOf(
  field: string,
  label: string,
  text: string,
  zone: string | undefined,
  faults: Fault[],
  typedAs: (time: string) => FaultAnswer['set'],
): number | null {
  const typed = text.trim()
  const clock = CLOCK.exec(typed)
  const minutes = Number(clock?.[1]) * 60 + Number(clock?.[2])
  if (clock !== null && minutes <= 24 * 60) return minutes
  if (WALL.test(typed) && zone === undefined) {
    faults.push(fault('zone', 'Time zone: missing. A day has one, for the clock may change in it.'))
    return null
  }
  const instant = WALL.test(typed) && zone !== undefined ? instantAt(typed, zone) : null
  if (instant !== null) return Date.parse(instant) / 60_000
  const clockMeant = typed.replace(/[.,]/, ':')
  faults.push(
    CLOCK.test(clockMeant)
      ? ask(field, `${label}: ${typed} is no time of the clock. Is ${clockMeant} meant?`, [
          { words: clockMeant, set: typedAs(clockMeant) },
        ])
      : fault(field, `${label}: a time such as 08:10.`),
  )
  return null
}

/** The same person can't be on two stages at once. */
function overlaps(attended: readonly Attended[]): readonly Fault[] {
  return attended.flatMap((one, i) =>
    attended
      .slice(0, i)
      .some(
        (other) =>
          other.entry.person.trim() === one.entry.person.trim() &&
          one.from < other.to &&
          other.from < one.to,
      )
      ? [
          fault(
            `entries.${i}.in`,
            `Attendances, row ${i + 1}: ${one.entry.person} is at another at that time. Correct one of the two.`,
          ),
        ]
      : [],
  )
}
