'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import type { Coat } from '@/lib/record/entities/coating.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'

const METAL = 'bare metal'

/** Enters what was taken off: all of it down to a layer or to metal, or a place that was sanded through. */
export function SandedForm({
  assembly,
  stack,
}: {
  readonly assembly: Assembly
  readonly stack: readonly Coat[]
}) {
  const press = usePress('coat.strip', 'It is entered.', { assembly: assembly.id })
  const [downTo, setDownTo] = useState(METAL)
  const [place, setPlace] = useState('')
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    setDownTo(input.text('downTo') || METAL)
    setPlace(input.text('place'))
    setReason(input.text('reason'))
  })
  return (
    <details>
      <summary>Taken off, or sanded through</summary>
      <form
        className="stack"
        noValidate
        onSubmit={async (event) => {
          event.preventDefault()
          setPressed(true)
          if (reason.trim() === '') return
          const done = await press.send({
            assembly: assembly.id,
            downTo: downTo === METAL ? null : downTo,
            ...(place.trim() === '' ? {} : { place: place.trim() }),
            reason: reason.trim(),
          })
          if (!done) return
          setPlace('')
          setReason('')
          setPressed(false)
        }}
      >
        <SelectField
          label="Down to"
          value={downTo}
          onChange={setDownTo}
          options={[
            { value: METAL, label: 'Bare metal' },
            ...stack
              .slice(0, -1)
              .map(({ id, product }) => ({ value: id, label: `The ${product}, which stays` })),
          ]}
          wrong={press.wrong('downTo')}
        />
        <TextField
          label="Only at this place"
          value={place}
          onChange={setPlace}
          hint="Empty where it all came off. A place sanded through has its own primer before anything else is laid."
        />
        <TextField
          label="Why"
          value={reason}
          onChange={setReason}
          wrong={pressed && reason.trim() === '' ? 'Say why: the record keeps it.' : undefined}
        />
        <PressFoot
          press={press}
          lined
          label={place.trim() === '' ? 'Enter it as taken off' : 'Enter it as sanded through'}
        />
      </form>
    </details>
  )
}
