'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { useShop } from '@/lib/live/shop-provider.tsx'
import type { Bay } from '@/lib/record/entities/people.ts'
import { all } from '@/lib/record/table.ts'
import { label } from '@/lib/words/labels.ts'

const TYPES = ['booth', 'lift', 'bench', 'trim bay', 'floor', 'dyno', 'store']

/** The places of the shop, each for one assembly at a time. */
export function Bays() {
  const { book } = useShop()
  const bays = all(book.bays)
  const inUse = bays.filter(({ retiredAt }) => retiredAt === null)
  const retired = bays.filter(({ retiredAt }) => retiredAt !== null)
  return (
    <section className="sheet stack">
      <Head title="Bays" note={String(inUse.length)} />
      {inUse.length === 0 && (
        <EmptyState title="No bay yet">
          Slots are claimed in bays: booth, lift, bench, trim bay.
        </EmptyState>
      )}
      <ul className="ruled">
        {inUse.map((bay) => (
          <BayRow key={bay.id} bay={bay} />
        ))}
      </ul>
      {retired.length > 0 && (
        <p className="small soft">Out of use: {retired.map(({ name }) => name).join(', ')}.</p>
      )}
      <AddBay />
    </section>
  )
}

function BayRow({ bay }: { readonly bay: Bay }) {
  const press = usePress('bay.describe', 'Saved.', { bay: bay.id })
  const [name, setName] = useState(bay.name)
  const [type, setType] = useState(bay.type)
  return (
    <li className="stack tight">
      <p>
        <b>{bay.name}</b> <span className="small">· {bay.type}</span>
      </p>
      <details>
        <summary>Rename or retire</summary>
        <form
          className="stack tight"
          noValidate
          onSubmit={(event) => {
            event.preventDefault()
            if (name.trim() !== '' && type.trim() !== '')
              void press.send({ bay: bay.id, name: name.trim(), type: type.trim() })
          }}
        >
          <TextField label="Name" value={name} onChange={setName} wrong={press.wrong('name')} />
          <TextField label="Kind" value={type} onChange={setType} list={TYPES} />
          <PressFoot press={press} lined label={label('bay.describe')} />
        </form>
        <CommandButton
          name="bay.retire"
          input={{ bay: bay.id }}
          line
          done={{ text: `${bay.name} is out of use.` }}
        >
          {label('bay.retire', { name: bay.name })}
        </CommandButton>
      </details>
    </li>
  )
}

function AddBay() {
  const press = usePress('bay.add', 'Added.')
  const [name, setName] = useState('')
  const [type, setType] = useState('')
  const [pressed, setPressed] = useState(false)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || type.trim() === '') return
        if (!(await press.send({ name: name.trim(), type: type.trim() }))) return
        setName('')
        setType('')
        setPressed(false)
      }}
    >
      <h3>Another bay</h3>
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        wrong={
          pressed && name.trim() === ''
            ? 'Name it, as it is called in the shop.'
            : press.wrong('name')
        }
      />
      <TextField
        label="Kind"
        value={type}
        onChange={setType}
        list={TYPES}
        wrong={
          pressed && type.trim() === ''
            ? 'Say what it is: booth, lift, bench.'
            : press.wrong('type')
        }
      />
      <PressFoot press={press} lined label={label('bay.add', { name: name.trim() || 'it' })} />
    </form>
  )
}
