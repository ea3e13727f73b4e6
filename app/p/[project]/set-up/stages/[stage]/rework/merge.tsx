'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'
import { ForeseenLines } from './foreseen-lines.tsx'
import { useOtherStages } from './other-stages.ts'
import { useForeseen } from './use-foreseen.ts'

/** One stage of two of the same party. */
export function Merge({ stage }: { readonly stage: Stage }) {
  const press = usePress('stage.merge', 'They are one stage now.', { stage: stage.id })
  const others = useOtherStages(
    stage,
    ({ party, state }) => party === stage.party && state === 'planned',
  )
  const [other, setOther] = useState('')
  const [name, setName] = useState(stage.name)
  const [pressed, setPressed] = useState(false)
  const input =
    other === '' || name.trim() === '' ? null : { stage: stage.id, other, name: name.trim() }
  const foreseen = useForeseen('stage.merge', input)
  return (
    <details>
      <summary>Put another stage into it</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (input !== null) void press.send(input)
        }}
      >
        <SelectField
          label="Which"
          value={other}
          onChange={setOther}
          none="Choose a stage of the same party"
          options={others}
          wrong={pressed && other === '' ? 'Choose the other stage.' : press.wrong('other')}
        />
        <TextField
          label="Name of the one"
          value={name}
          onChange={setName}
          wrong={pressed && name.trim() === '' ? 'Say what is done.' : press.wrong('name')}
        />
        <ForeseenLines foreseen={foreseen} />
        <PressFoot press={press} lined label={label('stage.merge')} />
      </form>
    </details>
  )
}
