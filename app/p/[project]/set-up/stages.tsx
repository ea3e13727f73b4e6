'use client'
import Link from 'next/link'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { TickSet } from '@/app/_ui/form/tick-set.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { all } from '@/lib/record/table.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'

/** The stages by number, each with its own set-up; a new one; the build order as a spreadsheet, in and out. */
export function Stages() {
  const { record, reader, standing } = useDesk()
  const [sought, setSought] = useState('')
  const stages = all(record.stages)
    .filter(
      (stage) =>
        stage.removedAt === null &&
        `${stage.number} ${stage.name} ${partyName(stage.party, record)}`
          .toLowerCase()
          .includes(sought.trim().toLowerCase()),
    )
    .toSorted((a, b) => a.number - b.number)
  const sets = standing.managesLead || standing.managesFor(standing.party)
  return (
    <section className="sheet stack">
      <Head title="Stages" note={String(stages.length)} />
      <div className="row">
        {standing.managesLead && (
          <>
            <Link className="btn" href={`/p/${record.id}/set-up/library`}>
              From the stage library
            </Link>
            <Link className="btn btn-line" href={`/p/${record.id}/set-up/import`}>
              Import a build order
            </Link>
          </>
        )}
        <a className="btn btn-line" href={`/api/projects/${record.id}/build-order.csv`} download>
          Export it
        </a>
      </div>
      <TextField label="Find a stage" type="search" value={sought} onChange={setSought} />
      {stages.length === 0 && (
        <EmptyState title={sought === '' ? 'No stage yet' : 'No such stage'}>
          Take them from the stage library, import them from a spreadsheet, or add them one by one.
        </EmptyState>
      )}
      <ul className="ruled stage-rows">
        {stages.map((stage) => (
          <li key={stage.id} className="rowend">
            <Link className="row-link" href={`/p/${record.id}/set-up/stages/${stage.id}`}>
              {stageNumber(stage.number)} · {stage.name}
            </Link>
            <span className="small">{partyName(stage.party, record, reader)}</span>
          </li>
        ))}
      </ul>
      {sets && standing.actsFor(standing.party) && <AddStage />}
    </section>
  )
}

function AddStage() {
  const { record, standing } = useDesk()
  const press = usePress('stage.add', 'Added. Draw its links in its own set-up.')
  const [name, setName] = useState('')
  const [party, setParty] = useState<string>(standing.party)
  const [assemblies, setAssemblies] = useState<readonly string[]>([])
  const [pressed, setPressed] = useState(false)
  const parties = partiesHere(record).filter(
    ({ id, role }) => role !== 'observer' && (standing.managesLead || id === standing.party),
  )
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '') return
        if (!(await press.send({ name: name.trim(), party, assemblies: [...assemblies] }))) return
        setName('')
        setAssemblies([])
        setPressed(false)
      }}
    >
      <h3>Another stage</h3>
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        wrong={
          pressed && name.trim() === ''
            ? 'Say what is done: a verb and a thing.'
            : press.wrong('name')
        }
      />
      <SelectField
        label="Whose work"
        value={party}
        onChange={setParty}
        options={parties.map(({ id, name: words }) => ({ value: id, label: words }))}
        wrong={press.wrong('party')}
      />
      <TickSet
        label="Works on"
        choices={all(record.assemblies).map(({ id, name: words }) => ({ value: id, label: words }))}
        picked={assemblies}
        onChange={setAssemblies}
      />
      <PressFoot press={press} lined label={label('stage.add', { name: name.trim() || 'it' })} />
    </form>
  )
}
