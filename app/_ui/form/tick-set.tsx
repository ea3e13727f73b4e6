'use client'
import { TickField } from './text-field.tsx'

interface Choice {
  readonly value: string
  readonly label: string
}

/** Several of a list, folded away with their names in the summary. */
export function TickSet({
  label,
  choices,
  picked,
  onChange,
  hint,
}: {
  readonly label: string
  readonly choices: readonly Choice[]
  readonly picked: readonly string[]
  readonly onChange: (picked: readonly string[]) => void
  readonly hint?: string
}) {
  const names = choices.filter(({ value }) => picked.includes(value)).map((choice) => choice.label)
  return (
    <details className="tick-set">
      <summary>
        {label}: {names.length === 0 ? 'none' : names.join(', ')}
      </summary>
      <fieldset className="picks">
        <legend>{hint ?? label}</legend>
        {choices.map((choice) => (
          <TickField
            key={choice.value}
            label={choice.label}
            checked={picked.includes(choice.value)}
            onChange={(on) =>
              onChange(
                on ? [...picked, choice.value] : picked.filter((value) => value !== choice.value),
              )
            }
          />
        ))}
      </fieldset>
    </details>
  )
}
