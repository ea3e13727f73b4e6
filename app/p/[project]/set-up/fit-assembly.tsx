'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { label } from '@/lib/words/labels.ts'

/** Puts right by hand what an assembly is fitted to; work does it by its stages. */
export function FitAssembly({ assembly }: { readonly assembly: Assembly }) {
  const { record } = useDesk()
  const { id, name } = assembly
  if (assembly.host !== null)
    return (
      <ReasonFold
        name="assembly.takeOff"
        input={{ assembly: id }}
        label={label('assembly.takeOff', { name })}
        said="Entered."
      />
    )
  const hosts = all(record.assemblies).filter(
    (other) => other.id !== id && other.custodian === assembly.custodian,
  )
  return hosts.length === 0 ? null : <FitTo assembly={assembly} hosts={hosts} />
}

function FitTo({
  assembly,
  hosts,
}: {
  readonly assembly: Assembly
  readonly hosts: readonly Assembly[]
}) {
  const press = usePress('assembly.fit', 'Entered.', { assembly: assembly.id })
  const [host, setHost] = useState<string>(hosts[0]?.id ?? '')
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  const said = label('assembly.fit', { name: assembly.name })
  return (
    <details>
      <summary>{said}</summary>
      <form
        className="stack tight"
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (reason.trim() !== '')
            void press.send({ assembly: assembly.id, host, reason: reason.trim() })
        }}
      >
        <SelectField
          label="Fitted to"
          value={host}
          onChange={setHost}
          options={hosts.map(({ id, name }) => ({ value: id, label: name }))}
        />
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
        <PressFoot press={press} lined label={said} />
      </form>
    </details>
  )
}
