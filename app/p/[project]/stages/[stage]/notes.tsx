'use client'
import { useState } from 'react'
import { ReasonForm } from '@/app/_ui/form/reason-form.tsx'
import { TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { Sheet } from '@/app/_ui/paper.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useCommand } from '@/lib/live/use-command.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName, personName } from '@/lib/words/names.ts'

/** Notes on an entity: shared with all who see it, or private to the shop. */
export function Notes({ on }: { readonly on: string }) {
  const { record, reader, standing } = useDesk()
  const notes = [...record.notes.rows.values()]
    .filter((note) => note.on === on && note.withdrawnAt === null)
    .toSorted((a, b) => (a.at < b.at ? -1 : 1))
  const may = standing.actsFor(reader.view.party)
  if (notes.length === 0 && !may) return null
  return (
    <Sheet title="Notes" note={notes.length}>
      {notes.length > 0 && (
        <ul className="ruled">
          {notes.map((note) => (
            <li key={note.id}>
              <p>{note.text}</p>
              <p className="small soft">
                {personName(note.person, reader.people)}, {partyName(note.party, record)},{' '}
                {moment(note.at, reader)}
                {note.sharing === 'shop' ? ' · private to your shop' : ''}
              </p>
              <UnsentMark entity={note.id} />
              {(note.person === reader.person || standing.managesFor(note.party)) && (
                <ReasonForm
                  name="note.withdraw"
                  input={{ note: note.id }}
                  label={label('note.withdraw')}
                  question="Why it is withdrawn"
                />
              )}
            </li>
          ))}
        </ul>
      )}
      {may && <WriteNote on={on} />}
    </Sheet>
  )
}

function WriteNote({ on }: { readonly on: string }) {
  const [text, setText] = useState('')
  const press = useCommand('note.write', () => setText(''), { on })
  const [shared, setShared] = useState(true)
  useRefusedInput(press, (input) => {
    setText(input.text('text'))
    setShared(input.is('sharing', 'shared'))
  })
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        if (press.waiting) return
        void press.send({ on, text, sharing: shared ? 'shared' : 'shop' })
      }}
    >
      <TextField label="A note" rows={2} value={text} onChange={setText} required />
      <TickField
        label="Shared with the other parties"
        hint="Otherwise only your own shop reads it."
        checked={shared}
        onChange={setShared}
      />
      <button type="submit" className="btn btn-line" aria-busy={press.waiting}>
        {press.waiting ? 'Sending…' : label('note.write')}
      </button>
      <Outcome press={press} />
    </form>
  )
}
