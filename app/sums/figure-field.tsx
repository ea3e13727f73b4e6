'use client'
import { type FocusEvent, useEffect, useId, useRef, useState } from 'react'
import { NumberPad } from '@/app/_ui/form/number-pad.tsx'
import { useThumb } from '@/app/_ui/form/use-thumb.ts'
import type { Typed, TypedFault } from '@/lib/sums/typed.ts'
import { isUnit, unitsLike } from '@/lib/sums/units.ts'

/** Where one figure, or several, are typed, with their unit. Under a thumb big keys of our own rise with it. */
export function FigureField({
  label,
  unit,
  help,
  several,
  value,
  onChange,
  decimal,
  wrong,
  onAnswer,
  chosenUnit,
  onUnit,
}: {
  readonly label: string
  readonly unit: string
  readonly help: string
  /** Several figures in the one field: then a space is needed, which the keys have not. */
  readonly several: boolean
  readonly value: string
  readonly onChange: (value: string) => void
  readonly decimal: '.' | ','
  readonly wrong: TypedFault | undefined
  readonly onAnswer: (typed: Typed) => void
  /** The unit that it is typed in; without `onUnit` it stands in the label and can't be chosen. */
  readonly chosenUnit: string
  readonly onUnit?: (unit: string) => void
}) {
  const thumb = useThumb()
  const [open, setOpen] = useState(false)
  const id = useId()
  const box = useRef<HTMLFieldSetElement>(null)
  const padded = thumb && open && !several
  const units = onUnit !== undefined && isUnit(unit) ? unitsLike(unit) : []
  useEffect(() => {
    if (padded) box.current?.scrollIntoView({ block: 'nearest' })
  }, [padded])
  const left = (event: FocusEvent<HTMLFieldSetElement>) => {
    const to = event.relatedTarget
    // Only another field takes the keys away: a button would slip from under the thumb as they go.
    if (to instanceof Node && !event.currentTarget.contains(to) && isField(to)) setOpen(false)
  }
  return (
    <fieldset
      ref={box}
      aria-label={label}
      className={padded ? 'reading stack tight pad-open' : 'reading stack tight'}
      onBlur={left}
    >
      <div className={units.length > 1 ? 'figure-row' : ''}>
        <div className="field">
          <label htmlFor={id}>
            {label}
            {units.length < 2 && chosenUnit !== '' ? `, ${chosenUnit}` : ''}
          </label>
          <input
            id={id}
            className="figure-in"
            inputMode={several ? 'text' : thumb ? 'none' : 'decimal'}
            autoComplete="off"
            value={value}
            aria-invalid={wrong !== undefined}
            aria-describedby={`${id}-says`}
            onFocus={() => setOpen(true)}
            onClick={() => setOpen(true)}
            onChange={(event) => onChange(event.target.value)}
          />
        </div>
        {units.length > 1 && (
          <div className="field">
            <label htmlFor={`${id}-unit`} className="sr-only">
              Unit of {label}
            </label>
            <select
              id={`${id}-unit`}
              value={chosenUnit}
              onChange={(event) => onUnit?.(event.target.value)}
            >
              {units.map((sign) => (
                <option key={sign} value={sign}>
                  {sign}
                </option>
              ))}
            </select>
          </div>
        )}
      </div>
      <div id={`${id}-says`} aria-live="polite">
        {wrong !== undefined && <FieldFault fault={wrong} onAnswer={onAnswer} />}
        {help !== '' && <p className="hint small soft">{help}</p>}
      </div>
      {padded && (
        <NumberPad
          label={`Keys for ${label}`}
          value={value}
          onChange={onChange}
          decimal={decimal}
          minus
        />
      )}
    </fieldset>
  )
}

const isField = (node: Node): boolean =>
  node instanceof HTMLInputElement || node instanceof HTMLSelectElement

/** What is wrong at a field, and what may have been meant. */
export function FieldFault({
  fault,
  onAnswer,
}: {
  readonly fault: TypedFault
  readonly onAnswer: (typed: Typed) => void
}) {
  return (
    <div className="stack tight">
      <p className="wrong">
        <i className="mark m-refused" aria-hidden="true" /> {fault.message}
      </p>
      <Answers fault={fault} onAnswer={onAnswer} />
    </div>
  )
}

/** What may have been meant, each in a press. */
export function Answers({
  fault,
  onAnswer,
}: {
  readonly fault: TypedFault
  readonly onAnswer: (typed: Typed) => void
}) {
  if (fault.answers.length === 0) return null
  return (
    <div className="row">
      {fault.answers.map(({ says, typed }) => (
        <button
          key={says}
          type="button"
          className="btn btn-line btn-small"
          onClick={() => onAnswer(typed)}
        >
          {says}
        </button>
      ))}
    </div>
  )
}
