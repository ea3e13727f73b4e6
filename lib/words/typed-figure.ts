/** The keys of a pad besides its ten figures. */
export type PadKey = 'decimal' | 'minus' | 'back' | 'clear' | `${number}`

/** How long a figure may get before the pad takes no more: nine before the sign and four after it, as `readQuantity` reads. */
const LONGEST = 15

/** What stands in the field after a key. `decimal` is the reader's own sign. A second sign, or figures without end, change nothing. */
export function typedAfter(typed: string, key: PadKey, decimal = '.'): string {
  switch (key) {
    case 'clear':
      return ''
    case 'back':
      return typed.slice(0, -1)
    case 'minus':
      return /^[−-]/.test(typed) ? typed.slice(1) : `−${typed}`
    case 'decimal':
      if (/[.,]/.test(typed)) return typed
      return /\d$/.test(typed) ? typed + decimal : `${typed}0${decimal}`
    default:
      return typed.length >= LONGEST ? typed : typed + key
  }
}
