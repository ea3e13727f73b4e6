'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TickSet } from '@/app/_ui/form/tick-set.tsx'
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
  const [after, setAfter] = useState<readonly string[]>([])
  const [before, setBefore] = useState<readonly string[]>([])
  const [pressed, setPressed] = useState(false)
  const none = after.length === 0 && before.length === 0
  const input = none ? null : { stage: stage.id, after: [...after], before: [...before] }
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
        <TickSet label="It comes after" choices={all} picked={after} onChange={setAfter} />
        <TickSet label="and before" choices={planned} picked={before} onChange={setBefore} />
        {pressed && none && <p className="wrong">Say after what it comes, or before what.</p>}
        <p className="small">
          Lags of its old links don’t go along: they belong to what it stood between.
        </p>
        <ForeseenLines foreseen={foreseen} />
        <PressFoot press={press} lined label={label('stage.move', { number: stage.number })} />
      </form>
    </details>
  )
}
