'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { TickSet } from '@/app/_ui/form/tick-set.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { stepsOf } from '@/lib/build-order/steps.ts'
import { checksOf } from '@/lib/gate/indexes.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'
import { ForeseenLines } from './foreseen-lines.tsx'
import { useForeseen } from './use-foreseen.ts'

/** Two stages of one: what begins it stays, what follows it goes with the second. */
export function Split({ stage }: { readonly stage: Stage }) {
  const { record } = useDesk()
  const press = usePress('stage.split', 'It is two stages now.', { stage: stage.id })
  const [first, setFirst] = useState(stage.name)
  const [second, setSecond] = useState('')
  const [hours, setHours] = useState('')
  const [checks, setChecks] = useState<readonly string[]>([])
  const [steps, setSteps] = useState<readonly string[]>([])
  const [pressed, setPressed] = useState(false)
  const read = hours.trim() === '' ? null : readQuantity(hours)
  const whole =
    first.trim() !== '' && second.trim() !== '' && (hours.trim() === '' || read !== null)
  const input = whole
    ? {
        stage: stage.id,
        first: first.trim(),
        second: second.trim(),
        hours: read,
        checks: [...checks],
        steps: [...steps],
      }
    : null
  const foreseen = useForeseen('stage.split', input)
  return (
    <details>
      <summary>Split it in two</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          setPressed(true)
          if (input !== null) void press.send(input)
        }}
      >
        <p className="small">
          What it waits for stays with the first. What follows it, its points, its handover and what
          it fits or takes off go with the second.
        </p>
        <TextField
          label="The first"
          value={first}
          onChange={setFirst}
          wrong={pressed && first.trim() === '' ? 'Say what the first does.' : press.wrong('first')}
        />
        <TextField
          label="The second"
          value={second}
          onChange={setSecond}
          wrong={
            pressed && second.trim() === '' ? 'Say what the second does.' : press.wrong('second')
          }
        />
        <TextField
          label="Likely hours of the first"
          inputMode="decimal"
          value={hours}
          onChange={setHours}
          hint={
            stage.hoursLikely === null
              ? 'The whole has none given.'
              : `Of ${stage.hoursLikely}; empty for half each.`
          }
          wrong={
            pressed && hours.trim() !== '' && read === null
              ? 'Hours such as 4.5.'
              : press.wrong('hours')
          }
        />
        <TickSet
          label="Checks that go with the second"
          choices={checksOf(record.checks, stage.id).map(({ id, name }) => ({
            value: id,
            label: name,
          }))}
          picked={checks}
          onChange={setChecks}
        />
        <TickSet
          label="Steps that go with the second"
          choices={stepsOf(record, stage.id).map(({ id, text }) => ({ value: id, label: text }))}
          picked={steps}
          onChange={setSteps}
        />
        <ForeseenLines foreseen={foreseen} />
        <PressFoot press={press} lined label={label('stage.split', { number: stage.number })} />
      </form>
    </details>
  )
}
