'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Handover } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { moment } from '@/lib/words/dates.ts'
import { partyName, personName } from '@/lib/words/names.ts'

/** What was said after the receipt: each a new leaf, as the receipt itself stands. */
export function Remarks({ handover }: { readonly handover: Handover }) {
  const { record, reader, standing } = useDesk()
  const said = all(record.notes)
    .filter((note) => note.on === handover.id && note.withdrawnAt === null)
    .toSorted((a, b) => a.at.localeCompare(b.at))
  const takesPart = standing.actsFor(handover.from) || standing.actsFor(handover.to)
  if (said.length === 0 && !takesPart) return null
  return (
    <section className="sheet stack">
      <Head title="Later remarks" note={String(said.length)} />
      <ul className="ruled">
        {said.map((note) => (
          <li key={note.id}>
            <p className="small soft">
              {personName(note.person, reader.people)}, {partyName(note.party, record)},{' '}
              {moment(note.at, reader)}
            </p>
            <p className="prose">{note.text}</p>
          </li>
        ))}
      </ul>
      {takesPart && <AddRemark handover={handover} />}
    </section>
  )
}

function AddRemark({ handover }: { readonly handover: Handover }) {
  const press = usePress('note.write')
  const [text, setText] = useState('')
  const [pressed, setPressed] = useState(false)
  return (
    <form
      className="stack tight"
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (text.trim() === '') return
        if (!(await press.send({ on: handover.id, sharing: 'shared', text: text.trim() }))) return
        setText('')
        setPressed(false)
      }}
    >
      <TextField
        label="Add a remark, as a new leaf"
        rows={2}
        value={text}
        onChange={setText}
        placeholder="What did you see?"
        wrong={pressed && text.trim() === '' ? 'Write what you saw.' : press.wrong('text')}
        hint="Every party sees it."
      />
      <PressFoot press={press} lined label="Add the remark" />
    </form>
  )
}
