'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { readWhole } from '@/app/_ui/form/read-whole.ts'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { namedPersons } from '@/lib/build-order/named-persons.ts'
import { holdsOf } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName, personName } from '@/lib/words/names.ts'

/** The hold and witness points after a stage: what follows waits for them. */
export function Holds({ stage, sets }: { readonly stage: Stage; readonly sets: boolean }) {
  const { record, reader, standing } = useDesk()
  const holds = holdsOf(record.holds, stage.id)
  return (
    <section className="sheet stack">
      <Head title="Points" note={String(holds.length)} />
      <ul className="ruled">
        {holds.map((hold) => (
          <li key={hold.id} className="stack tight">
            <p>
              <b>{hold.name}</b>
              <span className="small">
                {' '}
                · {hold.point === 'hold' ? 'hold point' : 'witness point'} of{' '}
                {partyName(hold.party, record, reader)}
                {hold.person !== null && `, ${personName(hold.person, reader.people)}`} ·{' '}
                {hold.state}
              </span>
            </p>
            {standing.managesLead && hold.clearedAt === null && (
              <ReasonFold
                name="hold.remove"
                input={{ hold: hold.id }}
                label={label('hold.remove')}
              />
            )}
          </li>
        ))}
      </ul>
      {sets && stage.state !== 'signed off' && <SetHold stage={stage} />}
    </section>
  )
}

function SetHold({ stage }: { readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const { members } = useProject()
  const press = usePress('hold.set', 'The point is set.')
  const [point, setPoint] = useState('hold')
  const [name, setName] = useState('')
  const [party, setParty] = useState<string>(standing.party)
  const [person, setPerson] = useState('')
  const [notice, setNotice] = useState('2')
  const days = readWhole(notice)
  const [pressed, setPressed] = useState(false)
  const people = namedPersons(record, members, reader.people).filter((one) => one.party === party)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || days === null) return
        const whom = { ...(person === '' ? {} : { person }), noticeDays: days }
        if (!(await press.send({ stage: stage.id, point, name: name.trim(), party, ...whom })))
          return
        setName('')
        setPerson('')
        setPressed(false)
      }}
    >
      <h3>Set another</h3>
      <SelectField
        label="Kind"
        value={point}
        onChange={setPoint}
        options={[
          { value: 'hold', label: 'Hold point: nobody passes until it is released' },
          { value: 'witness', label: 'Witness point: invited, and may waive' },
        ]}
      />
      <TextField
        label="What is looked at"
        value={name}
        onChange={setName}
        wrong={pressed && name.trim() === '' ? 'Say what: gaps before paint.' : press.wrong('name')}
      />
      <SelectField
        label="By whom"
        value={party}
        onChange={(chosen) => {
          setParty(chosen)
          setPerson('')
        }}
        options={partiesHere(record).map(({ id, name: words }) => ({ value: id, label: words }))}
        wrong={press.wrong('party')}
      />
      {people.length > 0 && (
        <SelectField
          label="By one person of theirs"
          value={person}
          none="Anyone of them"
          onChange={setPerson}
          options={people.map((one) => ({ value: one.person, label: one.name }))}
          wrong={press.wrong('person')}
        />
      )}
      <TextField
        label="Notice, in working days"
        inputMode="numeric"
        value={notice}
        onChange={setNotice}
        hint="A witness who stays silent past it holds nothing up. A hold point always waits."
        wrong={days === null ? 'Whole days: 2, or 0.' : press.wrong('noticeDays')}
      />
      <PressFoot press={press} lined label={label('hold.set')} />
    </form>
  )
}
