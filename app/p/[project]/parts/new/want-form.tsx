'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { KeptSheet } from '@/app/_ui/press/kept-sheet.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { all } from '@/lib/record/table.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'

/** Puts a part on the list: what, who gets it, from whom, which stages wait for it. */
export function WantForm({ stage }: { readonly stage: string | undefined }) {
  const { record, standing } = useDesk()
  const router = useRouter()
  const press = usePress('part.want', {
    text: 'It is wanted.',
    undo: undoMade('part', 'part', {
      name: 'part.withdraw',
      label: 'Take it back',
      reason: 'Entered by mistake',
    }),
  })
  const [kept, setKept] = useState(false)
  const [name, setName] = useState('')
  const [number, setNumber] = useState('')
  const [party, setParty] = useState<string>(standing.party)
  const [supplier, setSupplier] = useState('')
  const [stages, setStages] = useState<ReadonlySet<string>>(
    new Set(stage === undefined ? [] : [stage]),
  )
  const [pressed, setPressed] = useState(false)
  const parties = partiesHere(record).filter(({ role }) => role !== 'observer')
  const planned = all(record.stages)
    .filter((row) => row.removedAt === null && row.state === 'planned')
    .toSorted((a, b) => a.number - b.number)
  useRefusedInput(press.command, (input) => {
    setKept(false)
    setName(input.text('name'))
    setNumber(input.text('number'))
    setParty(input.text('party'))
    setSupplier(input.text('supplier'))
    // One that is no longer planned could not be unticked.
    setStages(new Set(input.list('stages').filter((id) => planned.some((row) => row.id === id))))
  })

  const want = async () => {
    setPressed(true)
    if (name.trim() === '') return
    const outcome = await press.command.send({
      party,
      name: name.trim(),
      ...(number.trim() === '' ? {} : { number: number.trim() }),
      ...(supplier === '' ? {} : { supplier }),
      stages: [...stages],
    })
    setKept(outcome.status === 'kept')
    if (outcome.status !== 200) return
    const part = outcome.changed
      .flatMap(({ entities }) => entities)
      .find((entity) => entity.kind === 'part')
    router.push(`/p/${record.id}/parts${part === undefined ? '' : `/${part.id}`}`)
  }

  if (kept) return <KeptSheet href={`/p/${record.id}/parts`} label="All parts" />
  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void want()
      }}
    >
      <Head title="A part" />
      <TextField
        label="What"
        value={name}
        onChange={setName}
        wrong={pressed && name.trim() === '' ? 'Name the part.' : press.wrong('name')}
        placeholder="Windscreen, to pattern"
      />
      <TextField label="Part number, if it has one" value={number} onChange={setNumber} />
      {standing.managesLead && (
        <SelectField
          label="Who gets it"
          value={party}
          onChange={setParty}
          options={parties.map(({ id, name: words }) => ({ value: id, label: words }))}
          wrong={press.wrong('party')}
        />
      )}
      <SelectField
        label="From whom"
        value={supplier}
        onChange={setSupplier}
        none="Not known yet, or from outside"
        options={parties
          .filter(({ id }) => id !== party)
          .map(({ id, name: words }) => ({ value: id, label: words }))}
      />
      <details open={stages.size > 0}>
        <summary>Stages that wait for it ({stages.size})</summary>
        <fieldset className="picks">
          <legend>They can’t start before it is here and has passed</legend>
          {planned.map((row) => (
            <TickField
              key={row.id}
              label={`${stageNumber(row.number)} · ${row.name}`}
              checked={stages.has(row.id)}
              onChange={(on) => {
                const next = new Set(stages)
                if (on) next.add(row.id)
                else next.delete(row.id)
                setStages(next)
              }}
            />
          ))}
        </fieldset>
      </details>
      <PressFoot press={press} label={label('part.want', { name: name.trim() || 'it' })} />
    </form>
  )
}
