'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'
import { ForeseenLines } from './foreseen-lines.tsx'
import { useForeseen } from './use-foreseen.ts'

/** To another party, with a reason: also while it rests. */
export function Give({ stage }: { readonly stage: Stage }) {
  const { record } = useDesk()
  const press = usePress('stage.give', 'Given.', { stage: stage.id })
  const [party, setParty] = useState('')
  const [reason, setReason] = useState('')
  const [pressed, setPressed] = useState(false)
  const input =
    party === '' || reason.trim() === '' ? null : { stage: stage.id, party, reason: reason.trim() }
  const foreseen = useForeseen('stage.give', input)
  const parties = partiesHere(record).filter(
    ({ id, role }) => id !== stage.party && role !== 'observer',
  )
  return (
    <details>
      <summary>Give it to another party</summary>
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
          label="To"
          value={party}
          onChange={setParty}
          none="Choose the party"
          options={parties.map(({ id, name }) => ({ value: id, label: name }))}
          wrong={pressed && party === '' ? 'Choose who is to do it.' : press.wrong('party')}
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
        <p className="small">
          What it works on changes hands by a handover. What was conceded on it counts once they
          accept it too.
        </p>
        <ForeseenLines foreseen={foreseen} />
        <PressFoot
          press={press}
          lined
          label={label('stage.give', { name: party === '' ? undefined : partyName(party, record) })}
        />
      </form>
    </details>
  )
}
