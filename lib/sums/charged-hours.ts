import * as z from 'zod/mini'
import { chargedMinutes, chargeRule, hourlyRate, hoursAndMinutes, moneyFor } from './charge.ts'
import { measure, rows, words } from './fields.ts'
import { isFault } from './pennies.ts'
import { ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

const MOST_MINUTES = 100_000

/** Times as they stand on the sheet, charged by the shop's rule. */
export const chargedHours = defineSum({
  name: 'charged-hours',
  title: 'Times charged by a rule',
  group: 'money and hours',
  formula: 'each time rounded by the shop’s rule, then added; money = minutes × rate ÷ 60',
  source: 'Arithmetic; common practice.',
  tolerance: 'To the minute and the penny; never charged from the decimal that is shown.',
  hazards: [],
  input: z.strictObject({
    times: rows(
      'Times',
      z.strictObject({
        time: words('Time', 'Hours and minutes: 7:40, or 0:25.'),
        people: measure('People', '', { least: 1, greatest: 50 }),
      }),
    ),
    rule: chargeRule,
    rate: hourlyRate,
  }),
  reckon({ times, rule, rate }) {
    const read = times.map(({ time, people }, i) =>
      Number.isInteger(people)
        ? minutesOf(time, i, times)
        : fault(
            `times.${i}.people`,
            `Times, row ${i + 1}, People: counted whole; ${people} is not.`,
          ),
    )
    const faults = read.filter(isFault)
    if (faults.length > 0) return refuse(...faults)
    // A helper's time is a person's too: two people for three hours are six.
    const each = read.flatMap((one) => (isFault(one) ? [] : [chargedMinutes(one, rule)]))
    const people = times.map((time) => time.people)
    const minutes = each.reduce((sum, one, i) => sum + one * (people[i] ?? 1), 0)
    const money = moneyFor(minutes, rate)
    if (isFault(money)) return refuse(money)
    return result(
      [
        figure('money', 'Money', money),
        figure('charged', 'Charged', hoursAndMinutes(minutes)),
        figure('minutes', 'Charged', minutes, 'min', 0),
        figure('hours', 'In decimals', minutes / 60, 'h'),
      ],
      {
        working: [
          `${each.map((one, i) => `${people[i]} × ${one}`).join(' + ')} = ${minutes} min, ${rule === 'none' ? 'by the minute' : `by ${rule}`}`,
        ],
      },
    )
  },
})

function minutesOf(
  time: string,
  row: number,
  times: readonly { readonly time: string; readonly people: number }[],
): number | Fault {
  const field = `times.${row}.time`
  const typed = time.trim()
  const found = /^(\d{1,4}):([0-5]\d)$/.exec(typed)
  const minutes = Number(found?.[1]) * 60 + Number(found?.[2])
  if (found !== null && minutes <= MOST_MINUTES) return minutes
  const decimal = /^(\d{1,4})[.,](\d{1,4})$/.exec(typed)
  if (decimal === null)
    return fault(field, `Times, row ${row + 1}: hours and minutes, such as 7:40.`)
  const [, hours = '', part = ''] = decimal
  const asMinutes = Math.round(Number(`${hours}.${part}`) * 60)
  const meantDecimal = `${Math.floor(asMinutes / 60)}:${String(asMinutes % 60).padStart(2, '0')}`
  const meantClock = part.length === 2 && Number(part) < 60 ? `${hours}:${part}` : null
  const set = (text: string) => ({
    times: times.map((each, i) => (i === row ? { ...each, time: text } : each)),
  })
  return ask(field, `Times, row ${row + 1}: is ${typed} in hours and minutes, or in decimals?`, [
    ...(meantClock === null
      ? []
      : [{ words: `${meantClock}, hours and minutes`, set: set(meantClock) }]),
    { words: `${typed} h, which is ${meantDecimal}`, set: set(meantDecimal) },
  ])
}
