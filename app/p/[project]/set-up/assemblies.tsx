'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { readWhole } from '@/app/_ui/form/read-whole.ts'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { label } from '@/lib/words/labels.ts'
import { assemblyName, partyName } from '@/lib/words/names.ts'
import { FitAssembly } from './fit-assembly.tsx'

/** What is worked on, moved and fitted; a lot counts its pieces. */
export function Assemblies() {
  const { record, standing } = useDesk()
  const assemblies = all(record.assemblies).toSorted((a, b) => a.name.localeCompare(b.name))
  return (
    <section className="sheet stack">
      <Head title="Assemblies" note={String(assemblies.length)} />
      {assemblies.length === 0 && (
        <EmptyState title="Nothing to work on yet">Begin with the shell.</EmptyState>
      )}
      <ul className="ruled">
        {assemblies.map((assembly) => (
          <AssemblyRow key={assembly.id} assembly={assembly} />
        ))}
      </ul>
      {standing.managesLead && <AddAssembly />}
    </section>
  )
}

function AssemblyRow({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader, standing } = useDesk()
  const facts = (
    <span className="row spread wide">
      <b>{assembly.name}</b>
      <span className="small">
        {assembly.holdsFuel && 'holds fuel · '}
        {assembly.pieces > 1 && `${assembly.pieces} pieces · `}
        {partyName(assembly.custodian, record, reader)}
        {assembly.host !== null && ` · fitted to ${assemblyName(assembly.host, record)}`}
      </span>
    </span>
  )
  if (!standing.managesLead && !standing.managesFor(assembly.custodian)) return <li>{facts}</li>
  return (
    <li>
      <details>
        <summary>{facts}</summary>
        <DescribeAssembly assembly={assembly} />
        {standing.managesFor(assembly.custodian) && <FitAssembly assembly={assembly} />}
      </details>
    </li>
  )
}

function DescribeAssembly({ assembly }: { readonly assembly: Assembly }) {
  const press = usePress('assembly.describe', 'Saved.', { assembly: assembly.id })
  const [name, setName] = useState(assembly.name)
  const [pieces, setPieces] = useState(String(assembly.pieces))
  const [holdsFuel, setHoldsFuel] = useState(assembly.holdsFuel)
  const count = readWhole(pieces)
  const piecesWrong =
    count === null || count < 1 ? 'Count the pieces: a whole number from 1 up.' : undefined
  return (
    <form
      className="stack tight"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        if (count === null || piecesWrong !== undefined) return
        void press.send({ assembly: assembly.id, name: name.trim(), pieces: count, holdsFuel })
      }}
    >
      <TextField label="Name" value={name} onChange={setName} wrong={press.wrong('name')} />
      <TextField
        label="Pieces"
        inputMode="numeric"
        value={pieces}
        onChange={setPieces}
        wrong={piecesWrong ?? press.wrong('pieces')}
      />
      <TickField
        label="It holds fuel"
        hint="No hot work on what it is fitted to, whoever asks."
        checked={holdsFuel}
        onChange={setHoldsFuel}
      />
      <PressFoot press={press} lined label={label('assembly.describe')} />
    </form>
  )
}

function AddAssembly() {
  const { record, standing } = useDesk()
  const press = usePress('assembly.add', 'Added.')
  const [name, setName] = useState('')
  const [pieces, setPieces] = useState('1')
  const [custodian, setCustodian] = useState<string>(standing.party)
  const [pressed, setPressed] = useState(false)
  const count = readWhole(pieces)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || count === null || count < 1) return
        if (!(await press.send({ name: name.trim(), pieces: count, custodian }))) return
        setName('')
        setPieces('1')
        setPressed(false)
      }}
    >
      <h3>Another assembly</h3>
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        wrong={
          pressed && name.trim() === '' ? 'Name it: shell, engine, left door.' : press.wrong('name')
        }
      />
      <TextField
        label="Pieces"
        inputMode="numeric"
        value={pieces}
        onChange={setPieces}
        hint="More than 1 for a lot that travels as one, such as 14 pieces of brightwork."
        wrong={
          pressed && (count === null || count < 1)
            ? 'A whole number from 1 up.'
            : press.wrong('pieces')
        }
      />
      <SelectField
        label="Who has it now"
        value={custodian}
        onChange={setCustodian}
        options={partiesHere(record)
          .filter(({ role }) => role !== 'observer')
          .map(({ id, name: words }) => ({ value: id, label: words }))}
        wrong={press.wrong('custodian')}
      />
      <PressFoot press={press} lined label={label('assembly.add', { name: name.trim() || 'it' })} />
    </form>
  )
}
