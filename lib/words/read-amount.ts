import { Minor, TaxRate } from '../record/scalars.ts'

/** What people type around a figure: spaces of all kinds, thousands' apostrophes, currency signs and letters, per cent. */
const AROUND = /[\s'’\p{Sc}\p{L}%]/gu

/** The plain decimal text behind a typed figure (`1.234,5` → `1234.5`), or null where it is none. */
function plainFigure(typed: string): string | null {
  const text = typed.replaceAll(AROUND, '').replaceAll('−', '-')
  const match = /^(-?)([\d.,]*\d[\d.,]*)$/.exec(text)
  const [, sign, digits] = match ?? []
  if (sign === undefined || digits === undefined) return null
  const mark = Math.max(digits.lastIndexOf('.'), digits.lastIndexOf(','))
  if (mark === -1) return sign + digits
  const whole = digits.slice(0, mark)
  const fraction = digits.slice(mark + 1)
  const sameMarkBefore = whole.includes(digits.charAt(mark))
  // Three figures after the only kind of mark are thousands: nobody types a tenth of a penny.
  const thousands = fraction.length === 3 && !/[.,]/.test(whole.replaceAll(digits.charAt(mark), ''))
  if (!thousands && sameMarkBefore) return null
  const groups = (thousands ? digits : whole).split(/[.,]/)
  if (groups.slice(1).some((group) => group.length !== 3)) return null
  return sign + (thousands ? groups.join('') : `${groups.join('') || '0'}.${fraction || '0'}`)
}

/** Whole units of ten to the minus `places` behind a typed figure; null where it is none or has more places. */
function scaled(typed: string, places: number): number | null {
  const figure = plainFigure(typed)
  if (figure === null) return null
  const [whole = '', fraction = ''] = figure.replace('-', '').split('.')
  const cut = fraction.replace(/0+$/, '')
  if (cut.length > places) return null
  const value = Number(whole + cut.padEnd(places, '0'))
  if (!Number.isSafeInteger(value)) return null
  return figure.startsWith('-') && value !== 0 ? -value : value
}

const placesOf = (currency: string): number =>
  new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions()
    .maximumFractionDigits ?? 2

/** A typed sum in whole minor units: `£1,234.50`, `1.234,50`, `−95`. Null where it is no sum of that currency. */
export function readAmount(typed: string, currency: string): Minor | null {
  const value = scaled(typed, placesOf(currency))
  return value === null ? null : Minor.parse(value)
}

/** A typed quantity, at most four places: `5.5`, `5,5`. Null where it is none. */
export function readQuantity(typed: string): number | null {
  const text = typed.trim()
  // A lone comma or point in a quantity is a decimal mark, also before three figures.
  const match = /^([−-]?)(\d{1,9})(?:[.,](\d{1,4}))?$/.exec(text)
  const [, sign, whole, fraction] = match ?? []
  if (whole === undefined) return null
  const value = Number(`${whole}.${fraction ?? '0'}`)
  return sign === '' || value === 0 ? value : -value
}

/** A typed tax rate in hundredths of a per cent: `20`, `20 %`, `5,5`. Null where it is none from 0 to 100 %. */
export function readTaxRate(typed: string): TaxRate | null {
  const value = scaled(typed, 2)
  return value === null || value < 0 || value > 10_000 ? null : TaxRate.parse(value)
}

/** A sum as one would type it, to fill a field: `1234.50`. */
export function typedAmount(amount: number, currency: string): string {
  const places = placesOf(currency)
  const digits = String(Math.abs(amount)).padStart(places + 1, '0')
  const whole = digits.slice(0, digits.length - places)
  const text = places === 0 ? whole : `${whole}.${digits.slice(-places)}`
  return amount < 0 ? `-${text}` : text
}
