import { isWithin } from '../build-order/within-limits.ts'
import type { Check } from '../record/entities/work.ts'
import { figure, limits, reading } from './money.ts'

/** What a figure is worth before it is sent: in words, and whether it lies within its limits. */
export interface Verdict {
  readonly within: boolean
  readonly text: string
}

/**
 * A figure beside the limits of its check: `3.9 bar · within 3.1 to 4.5 bar`, `2.7 bar · under the limits, 3.1 to 4.5 bar`. Without
 * limits the figure alone.
 */
export function readingVerdict(
  check: Pick<Check, 'least' | 'greatest' | 'unit'>,
  value: number,
  locale: string,
): Verdict {
  const { least, greatest, unit } = check
  const said = reading(value, unit, locale)
  const within = isWithin(check, value)
  if (least === null && greatest === null) return { within, text: said }
  const under = least !== null && value < least
  const where = within ? 'within' : under ? 'under' : 'over'
  if (least !== null && greatest !== null) {
    const span = `${figure(least, locale)} to ${reading(greatest, unit, locale)}`
    return { within, text: `${said} · ${within ? where : `${where} the limits,`} ${span}` }
  }
  const limit = limits({ least, greatest, unit }, locale)
  return { within, text: `${said} · ${within ? where : `${where} the limit`}, ${limit}` }
}

/** The sign between whole and fraction, as the reader's keyboard has it: `.` or `,`. */
export const decimalSign = (locale: string): '.' | ',' =>
  new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === 'decimal')?.value ===
  ','
    ? ','
    : '.'
