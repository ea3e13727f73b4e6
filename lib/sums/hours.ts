import * as z from 'zod/mini'
import { divideHalfAway } from '../record/tax.ts'
import { Decimal } from './decimal.ts'
import { choice, measure, measures, words } from './fields.ts'
import { type Answer, ask, defineSum, type Fault, fault, figure, refuse, result } from './sum.ts'

const SOURCE = 'Arithmetic; common practice.'
const price = measure('Rate', 'an hour', { least: 0, greatest: 100_000 })
const RULES = ['none', '6 min up', '15 min up', '6 min nearest', '15 min nearest'] as const
const rule = choice('Charged', RULES, {
  none: 'by the minute',
  '6 min up': 'by 6 minutes, up',
  '15 min up': 'by 15 minutes, up',
  '6 min nearest': 'by 6 minutes, to the nearest',
  '15 min nearest': 'by 15 minutes, to the nearest',
})
/** A longer day is asked about, in minutes. */
const LONG_DAY = 16 * 60

/** Money for minutes: whole pennies, half away from zero, from the minutes and never from the shown decimal. */
function moneyFor(minutes: number, rate: number): number {
  const pence = BigInt(new Decimal(rate).times(100).round(0).toFixed(0))
  return Number(divideHalfAway(BigInt(minutes) * pence, 60n)) / 100
}

function minuteOfDay(field: string, label: string, text: string, faults: Fault[]): number {
  const found = /^(\d{1,2}):(\d{2})$/.exec(text.trim())
  const [hour, minute] = [Number(found?.[1]), Number(found?.[2])]
  if (found === null || hour > 24 || minute > 59 || hour * 60 + minute > 1440) {
    faults.push(
      /^\d+[.,]\d+$/.test(text.trim())
        ? ask(field, `${label} ${text}: a time is written 7:40. Are hours in decimals meant?`)
        : fault(field, `${label}: a time such as 08:10.`),
    )
    return 0
  }
  return hour * 60 + minute
}

/** One attendance by the clock. */
export const clocked = defineSum({
  name: 'clocked-hours',
  title: 'Hours by the clock',
  group: 'money and hours',
  formula:
    'minutes = out − in − breaks; hours = minutes ÷ 60; money = minutes × rate ÷ 60, to the penny',
  source: SOURCE,
  tolerance: 'To the minute and the penny; never charged from the decimal that is shown.',
  hazards: [],
  input: z.strictObject({
    in: words('In', 'Such as 08:10.'),
    out: words('Out', 'After midnight: give two attendances.'),
    breaks: measure('Breaks', 'min', { least: 0, greatest: 600 }),
    rate: z.optional(price),
  }),
  reckon(input): Answer {
    const faults: Fault[] = []
    const from = minuteOfDay('in', 'In', input.in, faults)
    const to = minuteOfDay('out', 'Out', input.out, faults)
    if (faults.length > 0) return refuse(...faults)
    if (to <= from)
      return refuse(fault('out', 'Out: not after in. Across midnight give two attendances.'))
    const minutes = to - from - input.breaks
    if (minutes < 0) return refuse(fault('breaks', 'Breaks: longer than the attendance.'))
    if (minutes > LONG_DAY) return refuse(ask('out', 'Out: over 16 hours in a day. Is that right?'))
    if (!Number.isInteger(minutes)) return refuse(fault('breaks', 'Breaks: whole minutes.'))
    return result(
      [
        figure('minutes', 'Worked', minutes, 'min', 0),
        figure('hours', 'In decimals', minutes / 60, 'h'),
        ...(input.rate === undefined
          ? []
          : [figure('money', 'Charged', moneyFor(minutes, input.rate))]),
      ],
      { working: [`${to - from} − ${input.breaks} = ${minutes} min`] },
    )
  },
})

/** Entries charged by a rule. */
export const chargedHours = defineSum({
  name: 'charged-hours',
  title: 'Entries charged by a rule',
  group: 'money and hours',
  formula: 'each entry rounded by the shop’s rule, then added; money = minutes × rate ÷ 60',
  source: SOURCE,
  tolerance: 'To the minute and the penny',
  hazards: [],
  input: z.strictObject({
    entries: measures('Entries', 'min', { least: 0, greatest: 960 }),
    rule,
    rate: price,
  }),
  reckon({ entries, rule: by, rate }) {
    const odd = entries.findIndex((minutes) => !Number.isInteger(minutes))
    if (odd !== -1)
      return refuse(fault(`entries.${odd}`, `Entries, figure ${odd + 1}: whole minutes.`))
    const step = by === 'none' ? 1 : by.startsWith('6') ? 6 : 15
    const charged = entries.map((minutes) =>
      by.endsWith('nearest') ? Math.round(minutes / step) * step : Math.ceil(minutes / step) * step,
    )
    const minutes = charged.reduce((a, b) => a + b, 0)
    return result(
      [
        figure('minutes', 'Charged', minutes, 'min', 0),
        figure('money', 'Money', moneyFor(minutes, rate)),
      ],
      {
        working: [`${charged.join(' + ')} = ${minutes} min`],
      },
    )
  },
})

const given = (label: string) => measure(label, 'h', { above: 0, greatest: 100_000 })

/** Efficiency and productivity. */
export const efficiency = defineSum({
  name: 'efficiency',
  title: 'Efficiency and productivity',
  group: 'money and hours',
  formula: 'efficiency = sold ÷ worked; productivity = sold ÷ attended',
  source: SOURCE,
  tolerance: '0.1 %',
  hazards: [],
  input: z.strictObject({
    sold: given('Sold'),
    worked: given('Worked'),
    attended: given('Attended'),
  }),
  reckon: ({ sold, worked, attended }) =>
    result([
      figure('efficiency', 'Efficiency', (sold / worked) * 100, '%', 1),
      figure('productivity', 'Productivity', (sold / attended) * 100, '%', 1),
    ]),
})

/** Three-point estimate: mean (a + 4m + b) ÷ 6, deviation (b − a) ÷ 6 (PERT; textbook, from memory). */
export const threePoint = defineSum({
  name: 'three-point',
  title: 'Three-point estimate',
  group: 'money and hours',
  formula: 'mean = (least + 4 × likely + most) ÷ 6; deviation = (most − least) ÷ 6',
  source: 'Three-point method, PERT; textbook, from memory.',
  tolerance: '0.01 h',
  hazards: [],
  input: z.strictObject({ least: given('Least'), likely: given('Likely'), most: given('Most') }),
  reckon({ least, likely, most }): Answer {
    if (least > likely || likely > most)
      return refuse(fault('likely', 'Likely: the three must go up from least to most.'))
    return result([
      figure('mean', 'Mean', (least + 4 * likely + most) / 6, 'h'),
      figure('deviation', 'Standard deviation', (most - least) / 6, 'h'),
    ])
  },
})
