'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { label } from '@/lib/words/labels.ts'

/** The car by name, year and what else one says of it. */
export function Car() {
  const { record, standing } = useDesk()
  const project = record.projects.rows.get(record.id)
  const press = usePress('project.describe', 'Saved.')
  const [name, setName] = useState(project?.name ?? '')
  const [year, setYear] = useState(String(project?.year ?? ''))
  const [description, setDescription] = useState(project?.description ?? '')
  const [pressed, setPressed] = useState(false)
  const yearRead = year.trim() === '' ? null : Number(year)
  const yearWrong =
    yearRead !== null && !Number.isInteger(yearRead)
      ? 'A year such as 1961, or nothing.'
      : undefined
  if (project === undefined) return null
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || yearWrong !== undefined) return
        void press.send({ name: name.trim(), year: yearRead, description })
      }}
    >
      <Head title="The car" />
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        disabled={!standing.managesLead}
        wrong={pressed && name.trim() === '' ? 'Give the car a name.' : press.wrong('name')}
      />
      <TextField
        label="Year"
        inputMode="numeric"
        value={year}
        onChange={setYear}
        disabled={!standing.managesLead}
        wrong={yearWrong ?? press.wrong('year')}
      />
      <TextField
        label="What else stands on its plate"
        value={description}
        onChange={setDescription}
        disabled={!standing.managesLead}
        hint="Body, colours, chassis number"
      />
      <dl className="facts">
        <dt>Currency</dt>
        <dd>{project.currency}</dd>
        <dt>Time zone</dt>
        <dd>{project.timeZone.replaceAll('_', ' ')}</dd>
      </dl>
      {standing.managesLead && <PressFoot press={press} lined label={label('project.describe')} />}
    </form>
  )
}
