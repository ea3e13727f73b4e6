'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { all } from '@/lib/record/table.ts'
import { day } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { money } from '@/lib/words/money.ts'
import { partyName } from '@/lib/words/names.ts'

/** Payments that were agreed to come before this stage starts; who is to be paid says when one has come. */
export function Payments({ stage }: { readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const mine = standing.managesFor(stage.party)
  const agreed = all(record.milestones).filter(
    (one) => one.stage === stage.id && one.removedAt === null,
  )
  if (agreed.length === 0 && !mine) return null
  return (
    <section className="sheet stack">
      <Head title="Payments before it" note={String(agreed.length)} />
      <ul className="ruled">
        {agreed.map((one) => (
          <li key={one.id} className="stack tight">
            <p>
              <b>{one.name}</b>
              {one.net !== null &&
                ` · ${money(one.net, reader.currency, reader.locale)} before tax`}
              <span className="small">
                {' '}
                · from {partyName(one.payer, record, reader)} ·{' '}
                {one.metAt === null ? 'not paid yet' : `paid, ${day(one.metAt, reader)}`}
              </span>
            </p>
            {mine && one.metAt === null && (
              <div className="row">
                <CommandButton name="milestone.meet" input={{ milestone: one.id }}>
                  {label('milestone.meet')}
                </CommandButton>
                <CommandButton name="milestone.withdraw" input={{ milestone: one.id }}>
                  {label('milestone.withdraw')}
                </CommandButton>
              </div>
            )}
          </li>
        ))}
      </ul>
      {mine && stage.state === 'planned' && <Agree stage={stage} />}
    </section>
  )
}

function Agree({ stage }: { readonly stage: Stage }) {
  const { record } = useDesk()
  const press = usePress('milestone.agree', 'Agreed: it is asked for at the start.', {
    stage: stage.id,
  })
  const [name, setName] = useState('')
  const [payer, setPayer] = useState('')
  const [pressed, setPressed] = useState(false)
  const payers = partiesHere(record).filter(
    ({ id, role }) => id !== stage.party && role !== 'observer',
  )
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || payer === '') return
        if (!(await press.send({ stage: stage.id, payer, name: name.trim() }))) return
        setName('')
        setPayer('')
        setPressed(false)
      }}
    >
      <h3>Agree another</h3>
      <TextField
        label="What is paid"
        value={name}
        onChange={setName}
        wrong={
          pressed && name.trim() === '' ? 'Such as: a third before colour.' : press.wrong('name')
        }
      />
      <SelectField
        label="Who pays"
        value={payer}
        onChange={setPayer}
        none="Choose the party"
        options={payers.map(({ id, name: words }) => ({ value: id, label: words }))}
        wrong={pressed && payer === '' ? 'Choose who pays.' : press.wrong('payer')}
      />
      <PressFoot press={press} lined label={label('milestone.agree')} />
    </form>
  )
}
