'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_entry/press-foot.tsx'
import { TextField } from '@/app/_entry/text-field.tsx'
import { usePress } from '@/app/_entry/use-press.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { label } from '@/lib/words/labels.ts'

/** Takes a release back while nobody has received it. */
export function TakeBack({ handover }: { readonly handover: Handover }) {
  const press = usePress('handover.takeBack')
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  return (
    <details className="sheet">
      <summary>Released by mistake?</summary>
      <form
        className="stack"
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (reason.trim() !== '')
            void press.send({ handover: handover.id, reason: reason.trim() })
        }}
      >
        <TextField
          label="Why is it taken back?"
          value={reason}
          onChange={setReason}
          wrong={
            pressed && reason.trim() === ''
              ? 'Say why: the record keeps both presses.'
              : press.wrong('reason')
          }
        />
        <PressFoot press={press} lined label={label('handover.takeBack')} />
      </form>
    </details>
  )
}
