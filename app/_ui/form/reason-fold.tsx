'use client'
import { useState } from 'react'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import type { CommandName } from '@/lib/record/command-names.ts'
import type { Json } from '@/lib/record/condition.ts'
import { PressFoot } from './press-foot.tsx'
import { TextField } from './text-field.tsx'
import { usePress } from './use-press.ts'

/** Takes something out or back, with a reason that stays: folded away, so that it is never pressed in passing. */
export function ReasonFold({
  name,
  input,
  label,
  summary = label,
  question = 'Why?',
  unsaid = 'Say why: the record keeps it.',
  said,
  sheet = false,
}: {
  readonly name: CommandName
  readonly input: { readonly [field: string]: Json }
  readonly label: string
  /** What stands on the fold, where it is not the press's own label. */
  readonly summary?: string
  readonly question?: string
  /** What is told to who gives no reason. */
  readonly unsaid?: string
  /** What is told when it is done. */
  readonly said?: string
  /** A sheet of its own on the screen, not a line of another. */
  readonly sheet?: boolean
}) {
  const press = usePress(name, said, input)
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (refused) => setReason(refused.text('reason')))
  return (
    <details className={sheet ? 'sheet' : undefined}>
      <summary>{summary}</summary>
      <form
        className={sheet ? 'stack' : 'stack tight'}
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (reason.trim() !== '') void press.send({ ...input, reason: reason.trim() })
        }}
      >
        <TextField
          label={question}
          value={reason}
          onChange={setReason}
          wrong={pressed && reason.trim() === '' ? unsaid : press.wrong('reason')}
        />
        <PressFoot press={press} lined label={label} />
      </form>
    </details>
  )
}
