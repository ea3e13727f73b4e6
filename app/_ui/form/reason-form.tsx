'use client'
import { type ReactNode, useState } from 'react'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { useCommand } from '@/lib/live/use-command.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'
import type { StageId } from '@/lib/record/ids.ts'
import { TextField } from './text-field.tsx'

/** A lesser press that wants a reason: a button first, then the words and the press. */
export function ReasonForm({
  name,
  input,
  label,
  question,
  hint,
  stage,
  ready,
  children,
}: {
  readonly name: CommandName
  readonly input: { readonly [field: string]: Json }
  readonly label: string
  readonly question: string
  readonly hint?: string
  readonly stage?: StageId
  /** False while other fields, given as children, aren't filled well. */
  readonly ready?: boolean
  readonly children?: ReactNode
}) {
  const [open, setOpen] = useState(false)
  const [reason, setReason] = useState('')
  const press = useCommand(
    name,
    () => {
      setReason('')
      setOpen(false)
    },
    input,
  )
  useRefusedInput(press, (refused) => {
    setReason(refused.text('reason'))
    setOpen(true)
  })
  if (!open) {
    return (
      <div>
        <button type="button" className="btn btn-line btn-small" onClick={() => setOpen(true)}>
          {label}
        </button>
      </div>
    )
  }
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        if (press.waiting || ready === false) return
        void press.send({ ...input, reason })
      }}
    >
      {children}
      <TextField
        label={question}
        rows={2}
        value={reason}
        onChange={setReason}
        required
        {...(hint === undefined ? {} : { hint })}
      />
      <div className="row">
        <button type="submit" className="btn" aria-busy={press.waiting}>
          {press.waiting ? 'Sending…' : label}
        </button>
        <button type="button" className="btn btn-line" onClick={() => setOpen(false)}>
          Leave it
        </button>
      </div>
      <Outcome press={press} stage={stage} />
    </form>
  )
}
