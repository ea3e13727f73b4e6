'use client'
import { type HTMLInputTypeAttribute, type ReactNode, useId } from 'react'
import { DayInWords } from './day-in-words.tsx'

interface Common {
  readonly label: ReactNode
  readonly value: string
  readonly onChange: (value: string) => void
  readonly hint?: ReactNode
  /** What is wrong with it and the way out; nothing where all is well. */
  readonly wrong?: string | undefined
  readonly required?: boolean
  readonly disabled?: boolean
}

interface TextFieldProps extends Common {
  readonly type?: HTMLInputTypeAttribute
  readonly inputMode?: 'text' | 'decimal' | 'numeric' | 'email'
  readonly autoComplete?: string
  readonly placeholder?: string
  /** Lines of an area; one line where it is left out. */
  readonly rows?: number
  readonly list?: readonly string[]
  readonly min?: string
}

/** A labelled field, one line or several. What is wrong with it stands under it and is read out with it. */
export function TextField(props: TextFieldProps) {
  const id = useId()
  const { label, value, onChange, hint, wrong, rows, list } = props
  const shared = {
    id,
    value,
    required: props.required ?? false,
    disabled: props.disabled ?? false,
    placeholder: props.placeholder,
    autoComplete: props.autoComplete ?? 'off',
    'aria-invalid': wrong !== undefined,
    'aria-describedby': `${id}-hint`,
  }
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      {rows === undefined ? (
        <input
          {...shared}
          type={props.type ?? 'text'}
          inputMode={props.inputMode}
          min={props.min}
          list={list === undefined ? undefined : `${id}-list`}
          onChange={(event) => onChange(event.target.value)}
        />
      ) : (
        <textarea {...shared} rows={rows} onChange={(event) => onChange(event.target.value)} />
      )}
      {list !== undefined && (
        <datalist id={`${id}-list`}>
          {list.map((option) => (
            <option key={option} value={option} />
          ))}
        </datalist>
      )}
      <Under
        id={id}
        says={isDay(props.type) ? <DayInWords value={value} /> : undefined}
        hint={hint}
        wrong={wrong}
      />
    </div>
  )
}

const isDay = (type: HTMLInputTypeAttribute | undefined): boolean =>
  type === 'date' || type === 'datetime-local'

function Under({
  id,
  says,
  hint,
  wrong,
}: {
  readonly id: string
  readonly says?: ReactNode
  readonly hint: ReactNode
  readonly wrong: string | undefined
}) {
  return (
    <div id={`${id}-hint`} aria-live="polite">
      {says}
      {wrong !== undefined && (
        <p className="wrong">
          <i className="mark m-refused" aria-hidden="true" /> {wrong}
        </p>
      )}
      {hint !== undefined && <p className="hint">{hint}</p>}
    </div>
  )
}

interface SelectFieldProps extends Common {
  readonly options: readonly { readonly value: string; readonly label: string }[]
  /** Words of the empty choice; without it there is none. */
  readonly none?: string
}

/** A choice among a few, by the phone's own list. */
export function SelectField(props: SelectFieldProps) {
  const id = useId()
  return (
    <div className="field">
      <label htmlFor={id}>{props.label}</label>
      <select
        id={id}
        value={props.value}
        required={props.required ?? false}
        disabled={props.disabled ?? false}
        aria-invalid={props.wrong !== undefined}
        aria-describedby={`${id}-hint`}
        onChange={(event) => props.onChange(event.target.value)}
      >
        {props.none !== undefined && <option value="">{props.none}</option>}
        {props.options.map(({ value, label }) => (
          <option key={value} value={value}>
            {label}
          </option>
        ))}
      </select>
      <Under id={id} hint={props.hint} wrong={props.wrong} />
    </div>
  )
}

/** A tick with its words, as wide as the thumb needs. */
export function TickField({
  label,
  checked,
  onChange,
  hint,
}: {
  readonly label: ReactNode
  readonly checked: boolean
  readonly onChange: (checked: boolean) => void
  readonly hint?: ReactNode
}) {
  return (
    <label className="tick-row">
      <input
        type="checkbox"
        checked={checked}
        onChange={(event) => onChange(event.target.checked)}
      />
      <span>
        {label}
        {hint !== undefined && <span className="small soft block">{hint}</span>}
      </span>
    </label>
  )
}
