'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import type { Me } from '@/lib/command/wire.ts'
import { label } from '@/lib/words/labels.ts'

/** The car, its owner, and which of one's shops leads. */
export function NewProjectForm({
  shops,
  first,
}: {
  readonly shops: Me['shops']
  readonly first: string
}) {
  const press = usePress('project.create')
  const [shop, setShop] = useState(first)
  const [name, setName] = useState('')
  const [year, setYear] = useState('')
  const [description, setDescription] = useState('')
  const [owner, setOwner] = useState('')
  const [pressed, setPressed] = useState(false)
  const yearRead = year.trim() === '' ? undefined : Number(year)
  const yearWrong =
    yearRead !== undefined && !Number.isInteger(yearRead)
      ? 'A year such as 1961, or nothing.'
      : undefined

  const create = async () => {
    setPressed(true)
    if (name.trim() === '' || yearWrong !== undefined) return
    const outcome = await press.command.send({
      shop,
      name: name.trim(),
      description,
      ...(yearRead === undefined ? {} : { year: yearRead }),
      ...(owner.trim() === '' ? {} : { owner: owner.trim() }),
    })
    if (outcome.status !== 200) return
    const made = outcome.changed.find(({ record }) => record.startsWith('prj_'))
    window.location.assign(made === undefined ? '/' : `/p/${made.record}/set-up`)
  }

  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void create()
      }}
    >
      <Head title="The car" />
      {shops.length > 1 && (
        <SelectField
          label="Which of your shops leads"
          value={shop}
          onChange={setShop}
          options={shops.map(({ id, name: words }) => ({ value: id, label: words }))}
        />
      )}
      <TextField
        label="Name of the car"
        value={name}
        onChange={setName}
        wrong={pressed && name.trim() === '' ? 'Give the car a name.' : press.wrong('name')}
      />
      <TextField
        label="Year"
        inputMode="numeric"
        value={year}
        onChange={setYear}
        wrong={pressed ? (yearWrong ?? press.wrong('year')) : undefined}
      />
      <TextField
        label="What else stands on its plate"
        value={description}
        onChange={setDescription}
        hint="Body, colours, chassis number"
      />
      <TextField
        label="Name of the owner"
        value={owner}
        onChange={setOwner}
        wrong={press.wrong('owner')}
        hint="You invite them afterwards. Empty where it is not settled yet."
      />
      <PressFoot
        press={press}
        label={label('project.create')}
        note="Currency and time zone are your shop’s. Next: parties, assemblies, stages."
      />
    </form>
  )
}
