'use client'
import Link from 'next/link'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { ownerOf } from '@/lib/record/actor.ts'
import { type Party, PartyRole } from '@/lib/record/entities/people.ts'
import { label } from '@/lib/words/labels.ts'

const roles: { readonly [R in PartyRole]: string } = {
  owner: 'The owner of the car',
  shop: 'A shop',
  supplier: 'A supplier of parts',
  observer: 'An observer: reads, and changes nothing',
}

const standsAs = (party: Party): string =>
  [
    party.lead ? 'lead' : party.role,
    ...(party.role === 'shop'
      ? [party.bills === 'owner' ? 'bills the owner' : 'bills the lead']
      : []),
  ].join(', ')

/** Who takes part, and who pays them. */
export function Parties() {
  const { record, standing } = useDesk()
  return (
    <section className="sheet stack">
      <Head title="Parties" />
      <ul className="ruled">
        {partiesHere(record).map((party) => (
          <PartyRow key={party.id} party={party} />
        ))}
      </ul>
      {standing.managesLead && <AddParty />}
      <p className="way">
        <Link href={`/p/${record.id}/people`}>People and invitations</Link>
      </p>
    </section>
  )
}

function PartyRow({ party }: { readonly party: Party }) {
  const { standing } = useDesk()
  const facts = (
    <span className="row spread wide">
      <b>{party.name}</b>
      <span className="small">{standsAs(party)}</span>
    </span>
  )
  if (!standing.managesLead || party.lead || party.role === 'owner') return <li>{facts}</li>
  return (
    <li>
      <details>
        <summary>{facts}</summary>
        <CommandButton name="party.leave" input={{ party: party.id }} line>
          {label('party.leave', { name: party.name })}
        </CommandButton>
      </details>
    </li>
  )
}

function AddParty() {
  const { record } = useDesk()
  const press = usePress('party.add', 'They take part now. Invite their people next.')
  const [name, setName] = useState('')
  const [role, setRole] = useState<string>(ownerOf(record) === undefined ? 'owner' : 'shop')
  const [bills, setBills] = useState('owner')
  const [pressed, setPressed] = useState(false)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '') return
        const sent = await press.send({
          name: name.trim(),
          role,
          ...(role === 'shop' ? { bills } : {}),
        })
        if (!sent) return
        setName('')
        setPressed(false)
      }}
    >
      <h3>Who else takes part?</h3>
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        wrong={pressed && name.trim() === '' ? 'Give the name.' : press.wrong('name')}
      />
      <SelectField
        label="As"
        value={role}
        onChange={setRole}
        options={PartyRole.options.map((value) => ({ value, label: roles[value] }))}
        wrong={press.wrong('role')}
      />
      {role === 'shop' && (
        <SelectField
          label="Who pays it"
          value={bills}
          onChange={setBills}
          options={[
            { value: 'owner', label: 'The owner: sees its prices, says yes to its changes' },
            { value: 'lead', label: 'The lead: its prices are between the two' },
          ]}
          hint="It stays so: whoever paid has seen the prices."
        />
      )}
      <PressFoot press={press} lined label={label('party.add', { name: name.trim() || 'them' })} />
    </form>
  )
}
