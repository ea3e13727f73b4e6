import { divideHalfAway } from '../record/tax.ts'
import { choice } from './fields.ts'
import { isFault, moneyField, pennies, pounds } from './pennies.ts'
import type { Fault } from './sum.ts'

/** The shop's rule for charging minutes; it stands on its sheet. */
export const chargeRule = choice(
  'Charged',
  ['none', '6 min up', '15 min up', '6 min nearest', '15 min nearest'],
  {
    none: 'by the minute',
    '6 min up': 'by 6 minutes, up',
    '15 min up': 'by 15 minutes, up',
    '6 min nearest': 'by 6 minutes, to the nearest',
    '15 min nearest': 'by 15 minutes, to the nearest',
  },
)
type ChargeRule = '6 min up' | '15 min up' | '6 min nearest' | '15 min nearest' | 'none'

/** What an hour costs. */
export const hourlyRate = moneyField('Rate an hour', { least: 0 })

/** Whole minutes as they are charged; a half step goes up. */
export function chargedMinutes(minutes: number, rule: ChargeRule): number {
  if (rule === 'none') return minutes
  const step = rule.startsWith('6') ? 6 : 15
  return (rule.endsWith('up') ? Math.ceil(minutes / step) : Math.round(minutes / step)) * step
}

/** Money for minutes, to the penny, from the minutes and never from the decimal that is shown. */
export function moneyFor(minutes: number, rate: number): number | Fault {
  const pence = pennies('rate', 'Rate an hour', rate)
  return isFault(pence)
    ? pence
    : pounds(Number(divideHalfAway(BigInt(minutes) * BigInt(pence), 60n)))
}

/** Minutes as hours and minutes: `7 h 40`. */
export const hoursAndMinutes = (minutes: number): string =>
  `${Math.floor(minutes / 60)} h ${String(minutes % 60).padStart(2, '0')}`
