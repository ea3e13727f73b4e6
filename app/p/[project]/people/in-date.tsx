'use client'
import { useState } from 'react'
import { DayInWords } from '@/app/_ui/form/day-in-words.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Mark } from '@/app/_ui/mark.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { DatedThing } from '@/lib/record/entities/standing.ts'
import type { PartyId } from '@/lib/record/ids.ts'
import { all } from '@/lib/record/table.ts'
import { civilDateIn } from '@/lib/record/zoned-time.ts'
import { day } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { figure } from '@/lib/words/money.ts'
import { atStart } from '@/lib/words/names.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

/** What of a party is in date: booth, tackle, sprayers, wrenches. Of a person the record says in date or not, and nothing else. */
export function InDate({ party }: { readonly party: PartyId }) {
  const { record, reader, standing } = useDesk()
  const mine = standing.managesFor(party)
  const things = all(record.inDates).filter(
    (one) => one.party === party && one.withdrawnAt === null,
  )
  if (things.length === 0 && !mine) return null
  const today = civilDateIn(reader.now, reader.timeZone)
  return (
    <details open={things.some(({ until }) => until < today)}>
      <summary>
        In date: {things.filter(({ until }) => until >= today).length} of {things.length}
      </summary>
      <div className="stack">
        <ul className="ruled">
          {things.map((one) => (
            <li key={one.id} className="stack tight">
              <p>
                <Mark name={one.until >= today ? 'met' : 'refused'} /> <b>{one.name}</b>
                <span className="small">
                  {' '}
                  · {one.thing} ·{' '}
                  {one.until >= today
                    ? `in date until ${day(one.until, reader)}`
                    : `out of date since ${day(one.until, reader)}`}
                  {one.minutes !== null &&
                    ` · clears in ${figure(one.minutes, reader.locale, 1)} min`}
                </span>
              </p>
              {mine && (
                <div className="row">
                  <CommandButton name="inDate.withdraw" input={{ inDate: one.id }}>
                    {label('inDate.withdraw')}
                  </CommandButton>
                </div>
              )}
            </li>
          ))}
        </ul>
        {mine && <Enter party={party} />}
      </div>
    </details>
  )
}

function Enter({ party }: { readonly party: PartyId }) {
  const press = usePress('inDate.record', 'Entered.', { party })
  const [thing, setThing] = useState<string>('booth clearance')
  const [name, setName] = useState('')
  const [minutes, setMinutes] = useState('')
  const [doneOn, setDoneOn] = useState('')
  const [until, setUntil] = useState('')
  const [pressed, setPressed] = useState(false)
  const isBooth = thing === 'booth clearance'
  const read = readQuantity(minutes)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || doneOn === '' || until === '' || (isBooth && read === null))
          return
        const measured = isBooth ? { minutes: read } : {}
        if (!(await press.send({ party, thing, name: name.trim(), doneOn, until, ...measured })))
          return
        setName('')
        setMinutes('')
        setPressed(false)
      }}
    >
      <SelectField
        label="What"
        value={thing}
        onChange={setThing}
        options={DatedThing.options.map((value) => ({ value, label: atStart(value) }))}
      />
      <TextField
        label="Which"
        value={name}
        onChange={setName}
        hint={
          thing === 'fit for spraying'
            ? 'A name. In date or not is all that is kept.'
            : 'Such as Booth 1.'
        }
        wrong={pressed && name.trim() === '' ? 'Say which.' : press.wrong('name')}
      />
      {isBooth && (
        <TextField
          label="Clearance, measured, in minutes"
          inputMode="decimal"
          value={minutes}
          onChange={setMinutes}
          wrong={pressed && read === null ? 'Minutes such as 4.' : press.wrong('minutes')}
        />
      )}
      <TextField
        label="Done on"
        type="date"
        value={doneOn}
        onChange={setDoneOn}
        wrong={pressed && doneOn === '' ? 'Choose the day.' : press.wrong('doneOn')}
      />
      <DayInWords value={doneOn} />
      <TextField
        label="In date through"
        type="date"
        value={until}
        onChange={setUntil}
        wrong={pressed && until === '' ? 'Choose the day.' : press.wrong('until')}
      />
      <DayInWords value={until} />
      <PressFoot press={press} lined label={label('inDate.record')} />
    </form>
  )
}
