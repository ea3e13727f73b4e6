'use client'
import { useState } from 'react'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'
import { PressFoot } from './press-foot.tsx'
import { TextField } from './text-field.tsx'
import { usePress } from './use-press.ts'

/** Takes something out, with a reason that stays: folded away, so that it is never pressed in passing. */
export function RemoveFold({
  name,
  input,
  label,
}: {
  readonly name: CommandName
  readonly input: { readonly [field: string]: Json }
  readonly label: string
}) {
  const press = usePress(name)
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  return (
    <details>
      <summary>{label}</summary>
      <form
        className="stack tight"
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (reason.trim() !== '') void press.send({ ...input, reason: reason.trim() })
        }}
      >
        <TextField
          label="Why?"
          value={reason}
          onChange={setReason}
          wrong={
            pressed && reason.trim() === ''
              ? 'Say why: the record keeps it.'
              : press.wrong('reason')
          }
        />
        <PressFoot press={press} lined label={label} />
      </form>
    </details>
  )
}
