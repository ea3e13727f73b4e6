'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { instantAt } from '@/lib/record/zoned-time.ts'
import { exactSpan } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'

/** The windows that stand open for an assembly; the lead opens and closes them. */
export function OpenWindows({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader, standing } = useDesk()
  const { bays } = useProject()
  const open = all(record.openWindows)
    .filter((window) => window.assembly === assembly.id && window.closedAt === null)
    .toSorted((a, b) => a.from.localeCompare(b.from))
  return (
    <section className="sheet stack">
      <Head title="Open windows" note={String(open.length)} />
      {open.length === 0 && <p className="soft">None. The lead opens them.</p>}
      <ul className="ruled">
        {open.map((window) => (
          <li key={window.id} id={window.id} className="stack tight">
            <p>
              <b>{exactSpan(window.from, window.to, reader)}</b>
              {window.bay !== null &&
                ` · ${bays.find(({ id }) => id === window.bay)?.name ?? 'a bay'}`}
            </p>
            {standing.managesLead && (
              <CommandButton
                name="window.close"
                input={{ window: window.id }}
                line
                done={{ text: 'The window is closed. Slots claimed in it stand.' }}
              >
                {label('window.close')}
              </CommandButton>
            )}
          </li>
        ))}
      </ul>
      {standing.managesLead && <OpenForm key={assembly.id} assembly={assembly} />}
    </section>
  )
}

function OpenForm({ assembly }: { readonly assembly: Assembly }) {
  const { record, reader, standing } = useDesk()
  const { bays } = useProject()
  const press = usePress(
    'window.open',
    {
      text: 'The window is open: claims inside it are agreed at once.',
      undo: undoMade('openWindow', 'window', { name: 'window.close', label: 'Close it again' }),
    },
    { assembly: assembly.id },
  )
  const own = record.parties.rows.get(standing.party)?.shop
  const [from, setFrom] = useState('')
  const [to, setTo] = useState('')
  const [bay, setBay] = useState('')
  const [pressed, setPressed] = useState(false)
  const begins = instantAt(from, reader.timeZone)
  const ends = instantAt(to, reader.timeZone)
  return (
    <form
      className="stack"
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (begins === null || ends === null) return
        const sent = await press.send({
          assembly: assembly.id,
          from: begins,
          to: ends,
          ...(bay === '' ? {} : { bay }),
        })
        if (!sent) return
        setFrom('')
        setTo('')
        setPressed(false)
      }}
    >
      <h3>Open a window for {assembly.name}</h3>
      <TextField
        label="From"
        type="datetime-local"
        value={from}
        onChange={setFrom}
        wrong={pressed && begins === null ? 'Give the day and the time.' : press.wrong('from')}
      />
      <TextField
        label="To"
        type="datetime-local"
        value={to}
        onChange={setTo}
        wrong={pressed && ends === null ? 'Give the day and the time.' : press.wrong('to')}
        hint={`By the clock on the wall, ${reader.timeZone.replaceAll('_', ' ')}`}
      />
      <SelectField
        label="Where"
        value={bay}
        onChange={setBay}
        none="In a bay of whoever claims it"
        options={bays
          .filter((candidate) => candidate.shop === own && candidate.retiredAt === null)
          .map(({ id, name }) => ({ value: id, label: `In our ${name}` }))}
        wrong={press.wrong('bay')}
      />
      <PressFoot press={press} label={label('window.open')} />
    </form>
  )
}
