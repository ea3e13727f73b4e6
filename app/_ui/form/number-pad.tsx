'use client'
import type { ReactNode } from 'react'
import { type PadKey, typedAfter } from '@/lib/words/typed-figure.ts'

const FIGURES = ['1', '2', '3', '4', '5', '6', '7', '8', '9'] as const

/**
 * Big keys under a field, for gloves: they type into it and leave the focus where it was, so that a keyboard goes on working. Without
 * `decimal` it has figures alone, as for codes.
 */
export function NumberPad({
  label,
  value,
  onChange,
  decimal,
  minus,
  disabled,
  children,
}: {
  /** What is typed with it, for who can't see the field above. */
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  /** The reader's own decimal sign. */
  readonly decimal?: string
  readonly minus?: boolean
  readonly disabled?: boolean
  /** What stands under the keys: the press that sends it. */
  readonly children?: ReactNode
}) {
  const key = (name: PadKey, face: ReactNode, place = '', said?: string) => (
    <button
      key={name}
      type="button"
      className={`pad-key ${place}`}
      aria-label={said}
      disabled={disabled ?? false}
      // The field keeps the focus: what a keyboard types after this goes on where the thumb left off.
      onMouseDown={(event) => event.preventDefault()}
      onClick={() => onChange(typedAfter(value, name, decimal))}
    >
      {face}
    </button>
  )
  const others = (decimal === undefined ? 0 : 1) + (minus === true ? 1 : 0)
  return (
    <fieldset className="keys" aria-label={label}>
      {FIGURES.map((figure) => key(figure, figure))}
      {decimal !== undefined && key('decimal', decimal, '', decimal === ',' ? 'Comma' : 'Point')}
      {key('0', '0', `pad-nought-${3 - others}`)}
      {minus === true && key('minus', 'Minus', 'pad-word', 'Minus, or back to plus')}
      {key('back', 'Rub out', 'pad-word pad-back', 'Rub out the last one')}
      {key('clear', 'Clear', 'pad-word pad-clear', 'Clear all of it')}
      {children !== undefined && <div className="pad-foot">{children}</div>}
    </fieldset>
  )
}
