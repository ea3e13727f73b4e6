'use client'
import { type ReactNode, useId } from 'react'

export interface PickOption<V extends string> {
  readonly value: V
  readonly title: ReactNode
  readonly beside?: ReactNode
  readonly text?: ReactNode
}

/** One of several, each a card with room for its words; a native radio group. */
export function PickList<V extends string>({
  label,
  value,
  options,
  onChange,
  wrong,
}: {
  readonly label: string
  readonly value: V | null
  readonly options: readonly PickOption<V>[]
  readonly onChange: (value: V) => void
  readonly wrong?: string | undefined
}) {
  const name = useId()
  return (
    <fieldset className="picks stack tight">
      <legend>{label}</legend>
      {options.map((option) => (
        <label key={option.value} className="pick">
          <input
            type="radio"
            name={name}
            checked={value === option.value}
            onChange={() => onChange(option.value)}
          />
          <span className="stack tight">
            <span className="row spread">
              <b className="big">{option.title}</b>
              {option.beside !== undefined && <span className="small">{option.beside}</span>}
            </span>
            {option.text !== undefined && <span>{option.text}</span>}
          </span>
        </label>
      ))}
      {wrong !== undefined && (
        <p className="wrong" role="alert">
          <i className="mark m-refused" aria-hidden="true" /> {wrong}
        </p>
      )}
    </fieldset>
  )
}
