/** A figure as somebody typed it, or what must be asked about it. */
export type TypedNumber =
  | { readonly is: 'number'; readonly value: number }
  | { readonly is: 'no number' }
  /** It can be read in more than one way: each as it would be typed without doubt. */
  | { readonly is: 'doubtful'; readonly meant: readonly string[] }

/**
 * Reads a typed figure. A comma is the decimal sign where the reader's language has it; else, and before three figures wherever it could be
 * a thousand's, it is asked about and never guessed.
 */
export function readTypedNumber(typed: string, decimal: '.' | ','): TypedNumber {
  const text = typed.trim().replace(/^−/, '-')
  const other = decimal === '.' ? ',' : '.'
  if (/^-?[1-9]\d{0,2}(,\d{3})+$/.test(text)) return doubtful(text, ',', decimal)
  if (other === '.' && /^-?[1-9]\d{0,2}\.\d{3}$/.test(text)) return doubtful(text, '.', decimal)
  if (/^-?\d+(\.\d+)?$/.test(text)) return number(text)
  if (/^-?\d+,\d+$/.test(text))
    return decimal === ','
      ? number(text.replace(',', '.'))
      : { is: 'doubtful', meant: [text.replace(',', '.')] }
  return { is: 'no number' }
}

function doubtful(text: string, sign: ',' | '.', decimal: '.' | ','): TypedNumber {
  const whole = text.replaceAll(sign, '')
  const parts = text.split(sign)
  // Four figures after the decimal sign are no thousands: so written, nothing asks again.
  return parts.length === 2
    ? { is: 'doubtful', meant: [`${parts.join(decimal)}0`, whole] }
    : { is: 'doubtful', meant: [whole] }
}

function number(text: string): TypedNumber {
  const value = Number(text)
  return Number.isFinite(value) ? { is: 'number', value } : { is: 'no number' }
}
