import type { Minor } from '../record/scalars.ts'

/** A true minus, not a hyphen: it stands at the height of the figures. */
const MINUS = '−'

const made = new Map<string, Intl.NumberFormat>()
function format(locale: string, options: Intl.NumberFormatOptions): Intl.NumberFormat {
  const key = `${locale} ${JSON.stringify(options)}`
  let formatter = made.get(key)
  if (formatter === undefined) {
    formatter = new Intl.NumberFormat(locale, options)
    made.set(key, formatter)
  }
  return formatter
}

const withTrueMinus = (formatter: Intl.NumberFormat, value: number): string =>
  formatter
    .formatToParts(value)
    .map((part) => (part.type === 'minusSign' ? MINUS : part.value))
    .join('')

/** A sum with its pence, from minor units: `£14,212.80`, `−£95.00`. */
export function money(minor: Minor | number, currency: string, locale: string): string {
  const formatter = format(locale, { style: 'currency', currency })
  const digits = formatter.resolvedOptions().maximumFractionDigits ?? 2
  return withTrueMinus(formatter, minor / 10 ** digits)
}

/** A sum that is added to another: always with its sign, `+£760.80`. */
export function moneyChange(minor: Minor | number, currency: string, locale: string): string {
  return minor > 0 ? `+${money(minor, currency, locale)}` : money(minor, currency, locale)
}

/** A share of one whole, with one place: `perCent(0.103, …)` is `10.3 %`. Say beside it of what. */
export function perCent(share: number, locale: string): string {
  const formatter = format(locale, { minimumFractionDigits: 1, maximumFractionDigits: 1 })
  return `${withTrueMinus(formatter, share * 100)} %`
}

/** A tax rate from hundredths of a per cent: 2000 is `20 %`. */
export function taxRate(hundredths: number, locale: string): string {
  return `${withTrueMinus(format(locale, { maximumFractionDigits: 2 }), hundredths / 100)} %`
}

/** A plain figure as the reader writes it, with at most `places` decimals. */
export function figure(value: number, locale: string, places = 3): string {
  return withTrueMinus(format(locale, { maximumFractionDigits: places }), value)
}

/** `5.5 h`, which no line parts */
export const hours = (value: number, locale: string): string => `${figure(value, locale, 1)}\u00a0h`

/** `3.9 bar`, or the bare figure where there is no unit. */
export const reading = (value: number, unit: string | null, locale: string): string =>
  unit === null ? figure(value, locale) : `${figure(value, locale)} ${unit}`

/** `limits 3.1 to 4.5 bar`, `at least 3.1 bar`, `at most 0.10 mm`; empty where there are none. */
export function limits(
  check: {
    readonly least: number | null
    readonly greatest: number | null
    readonly unit: string | null
  },
  locale: string,
): string {
  const { least, greatest, unit } = check
  if (least !== null && greatest !== null) {
    return `limits ${figure(least, locale)} to ${reading(greatest, unit, locale)}`
  }
  if (least !== null) return `at least ${reading(least, unit, locale)}`
  if (greatest !== null) return `at most ${reading(greatest, unit, locale)}`
  return ''
}

/** `1 piece`, `14 pieces` */
export const counted = (count: number, one: string, many: string, locale: string): string =>
  `${figure(count, locale, 0)} ${count === 1 ? one : many}`
