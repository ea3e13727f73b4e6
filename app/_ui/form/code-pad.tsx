'use client'
import { type FormEvent, useId } from 'react'
import { NumberPad } from './number-pad.tsx'

/** A hand's own code on the big keys: a dot stands for each figure. Enter on a keyboard does as the press under the keys. */
export function CodePad({
  label,
  value,
  onChange,
  onEnter,
  press,
  least,
  most,
  waiting,
  hint,
  wrong,
}: {
  readonly label: string
  readonly value: string
  readonly onChange: (value: string) => void
  readonly onEnter: (code: string) => void
  /** Words of the press under the keys. */
  readonly press: string
  /** The fewest and most figures that a code has. */
  readonly least: number
  readonly most: number
  readonly waiting?: boolean
  readonly hint?: string
  readonly wrong?: string | undefined
}) {
  const id = useId()
  const take = (typed: string) => onChange(typed.replaceAll(/\D/g, '').slice(0, most))
  const enough = value.length >= least
  const onSubmit = (event: FormEvent) => {
    event.preventDefault()
    if (enough && waiting !== true) onEnter(value)
  }
  return (
    <form className="stack tight" onSubmit={onSubmit}>
      <div className="field">
        <label htmlFor={id}>{label}</label>
        <input
          id={id}
          className="pad-code"
          type="password"
          // The keys below are ours; the phone's own would cover them.
          inputMode="none"
          autoComplete="off"
          maxLength={most}
          value={value}
          aria-invalid={wrong !== undefined}
          aria-describedby={`${id}-under`}
          onChange={(event) => take(event.target.value)}
        />
        <div id={`${id}-under`} aria-live="polite">
          {wrong !== undefined && (
            <p className="wrong">
              <i className="mark m-refused" aria-hidden="true" /> {wrong}
            </p>
          )}
          {hint !== undefined && <p className="hint">{hint}</p>}
        </div>
      </div>
      <NumberPad label={label} value={value} onChange={take} disabled={waiting === true}>
        <button
          type="submit"
          className="btn btn-wide"
          disabled={!enough}
          aria-busy={waiting === true}
        >
          {waiting === true ? 'Sending…' : press}
        </button>
      </NumberPad>
    </form>
  )
}
