'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import type { ChangeOrder } from '@/lib/record/entities/money.ts'
import type { Note } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName, personName } from '@/lib/words/names.ts'
import { useMoneyView } from '../use-money-view.ts'

/** What was asked and answered about a change order, and the shop's next answer. */
export function Questions({ order }: { readonly order: ChangeOrder }) {
  const { record, reader, standing } = useMoneyView()
  const said = all(record.notes)
    .filter((note) => note.on === order.id && note.withdrawnAt === null && note.type !== 'note')
    .toSorted((a, b) => a.at.localeCompare(b.at))
  const speaker = ({ person, party }: Note) => {
    const names = [personName(person, reader.people), partyName(party, record)]
    return [...new Set(names)].join(', ')
  }
  const answers = standing.actsFor(order.party) && order.state !== 'withdrawn'
  if (said.length === 0) return null
  return (
    <section className="sheet stack">
      <Head title="Asked and answered" />
      <ul className="ruled">
        {said.map((note) => (
          <li key={note.id}>
            <p className="small soft">
              {note.type === 'question' ? 'Asked' : 'Answered'} by {speaker(note)},{' '}
              {moment(note.at, reader)}
            </p>
            <p className="prose">{note.text}</p>
          </li>
        ))}
      </ul>
      {answers && <Answer order={order} />}
    </section>
  )
}

function Answer({ order }: { readonly order: ChangeOrder }) {
  const press = usePress('changeOrder.answer', 'Answered.')
  const [text, setText] = useState('')
  useRefusedInput(press.command, (input) => setText(input.text('text')))
  const [pressed, setPressed] = useState(false)
  return (
    <form
      className="stack tight no-print"
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (text.trim() === '') return
        if (await press.send({ changeOrder: order.id, text: text.trim() })) {
          setText('')
          setPressed(false)
        }
      }}
    >
      <TextField
        label="Your answer"
        rows={2}
        value={text}
        onChange={setText}
        wrong={pressed && text.trim() === '' ? 'Write the answer first.' : press.wrong('text')}
      />
      <PressFoot press={press} lined label={label('changeOrder.answer')} />
    </form>
  )
}
