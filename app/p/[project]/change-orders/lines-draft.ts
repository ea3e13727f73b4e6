import type { ChangeLineInput } from '@/lib/money/price.ts'
import { quantityTimes } from '@/lib/money/price.ts'
import type { ChangeLine } from '@/lib/record/entities/money.ts'
import { readAmount, readQuantity, readTaxRate, typedAmount } from '@/lib/words/read-amount.ts'

/** One line of a change order as it is being typed. */
export interface LineDraft {
  readonly key: string
  readonly text: string
  readonly quantity: string
  readonly unit: string
  /** Price of one where there is a quantity, else of the line; minus for what falls away. */
  readonly price: string
  readonly taxRate: string
}

type Field = 'text' | 'quantity' | 'price' | 'taxRate'
export type LineFaults = { readonly [F in Field]?: string }

let made = 0
/** A blank line with the shop's usual tax rate. */
export const blankLine = (taxRate: string): LineDraft => ({
  key: `line ${++made}`,
  text: '',
  quantity: '',
  unit: '',
  price: '',
  taxRate,
})

/** A line that stands, to be typed over. */
export const draftOf = (line: ChangeLine, currency: string): LineDraft => ({
  key: line.id,
  text: line.text,
  quantity: line.quantity === null ? '' : String(line.quantity),
  unit: line.unit ?? '',
  price: typedAmount(line.unitPrice ?? line.net, currency),
  taxRate: String(line.taxRate / 100),
})

/** Most minor units of one line: far over any bill, and far under what is still counted exactly. */
const MOST_MINOR = 1_000_000_000_000

/** Nothing typed in it yet: such a line is left out. */
export const isBlank = ({ text, quantity, price }: LineDraft): boolean =>
  [text, quantity, price].every((typed) => typed.trim() === '')

/** The line as the command takes it, or what is wrong with it by field. */
export function readLine(
  draft: LineDraft,
  currency: string,
): { readonly line: ChangeLineInput | null; readonly faults: LineFaults } {
  const faults: { -readonly [F in Field]?: string } = {}
  const text = draft.text.trim()
  const counted = draft.quantity.trim() !== ''
  const quantity = counted ? readQuantity(draft.quantity) : null
  const price = readAmount(draft.price, currency)
  const taxRate = readTaxRate(draft.taxRate)
  if (text === '') faults.text = 'Say what it is for.'
  if (counted && (quantity === null || quantity <= 0))
    faults.quantity =
      'A number above 0 and up to 1,000,000, such as 5.5; leave it empty for a lump sum.'
  if (price === null) faults.price = 'A sum such as 62.00, or −95.00 for what falls away.'
  else if (Math.abs(price) * (quantity ?? 1) > MOST_MINOR)
    faults.price = 'More than a line can hold: give a smaller sum, or several lines.'
  if (taxRate === null) faults.taxRate = 'A rate from 0 to 100 per cent, such as 20.'
  if (Object.keys(faults).length > 0 || price === null || taxRate === null)
    return { line: null, faults }
  if (quantity === null) return { line: { text, net: price, taxRate }, faults }
  const unit = draft.unit.trim()
  const net = quantityTimes(quantity, price)
  return {
    line: { text, quantity, unitPrice: price, net, taxRate, ...(unit === '' ? {} : { unit }) },
    faults,
  }
}

/** The line as plain JSON, without what was left out. */
export function lineJson({ text, net, taxRate, quantity, unit, unitPrice }: ChangeLineInput): {
  readonly [field: string]: string | number
} {
  return {
    text,
    net,
    taxRate,
    ...(quantity === undefined ? {} : { quantity }),
    ...(unit === undefined ? {} : { unit }),
    ...(unitPrice === undefined ? {} : { unitPrice }),
  }
}
