'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'
import { ForeseenLines } from './foreseen-lines.tsx'
import { useOtherStages } from './other-stages.ts'
import { useForeseen } from './use-foreseen.ts'

/** To another place in the build order: what it stood between is linked as if it were gone. */
export function Move({ stage }: { readonly stage: Stage }) {
  const press = usePress('stage.move', 'Moved.', { stage: stage.id })
  const all = useOtherStages(stage)
  const planned = useOtherStages(stage, ({ state }) => state === 'planned')
  const [after, setAfter] = useState('')
  const [before, setBefore] = useState('')
  const [pressed, setPressed] = useState(false)
  const none = after === '' && before === ''
  const given = (id: string) => (id === '' ? [] : [id])
  const input = none ? null : { stage: stage.id, after: given(after), before: given(before) }
  const foreseen = useForeseen('stage.move', input)
  return (
    <details>
      <summary>Move it elsewhere</summary>
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
          label="It comes after"
          value={after}
          onChange={setAfter}
          none="Nothing in particular"
          options={all}
          wrong={
            pressed && none ? 'Say after what it comes, or before what.' : press.wrong('after')
          }
        />
        <SelectField
          label="and before"
          value={before}
          onChange={setBefore}
          none="Nothing in particular"
          options={planned}
          wrong={press.wrong('before')}
        />
        <p className="small">
          Lags of its old links don’t go along: they belong to what it stood between.
        </p>
        <ForeseenLines foreseen={foreseen} />
        <PressFoot press={press} lined label={label('stage.move', { number: stage.number })} />
      </form>
    </details>
  )
}
