'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { CheckType, type Stage } from '@/lib/record/entities/work.ts'
import { all } from '@/lib/record/table.ts'
import { label } from '@/lib/words/labels.ts'
import { limits } from '@/lib/words/money.ts'

const types: { readonly [T in CheckType]: string } = {
  reading: 'A reading, within limits',
  photo: 'A photo',
  tick: 'A tick',
  document: 'A document',
  signature: 'A signature',
}

/** A limit as it is typed: any number, or empty. Undefined where it is neither. */
function readLimit(typed: string): number | null | undefined {
  const text = typed.trim().replace(',', '.').replace('−', '-')
  if (text === '') return null
  return /^-?\d+(\.\d+)?$/.test(text) ? Number(text) : undefined
}

/** The evidence that a stage needs before its sign-off. */
export function Checks({ stage, sets }: { readonly stage: Stage; readonly sets: boolean }) {
  const { record, reader, standing } = useDesk()
  const checks = all(record.checks)
    .filter((check) => check.stage === stage.id && check.removedAt === null)
    .toSorted((a, b) => a.position - b.position)
  return (
    <section className="sheet stack">
      <Head title="Checks" note={String(checks.length)} />
      <ul className="ruled">
        {checks.map((check) => (
          <li key={check.id} className="stack tight">
            <p>
              <b>{check.name}</b>
              <span className="small">
                {' '}
                · {check.type} {limits(check, reader.locale)}
              </span>
            </p>
            {standing.managesLead && (
              <ReasonFold
                name="check.remove"
                input={{ check: check.id }}
                label={label('check.remove')}
              />
            )}
          </li>
        ))}
      </ul>
      {sets && stage.state !== 'signed off' && <AddCheck stage={stage} />}
    </section>
  )
}

function AddCheck({ stage }: { readonly stage: Stage }) {
  const press = usePress('check.add', {
    text: 'The check is asked for.',
    undo: undoMade('check', 'check', {
      name: 'check.remove',
      label: 'Take it back',
      reason: 'Entered by mistake',
    }),
  })
  const [type, setType] = useState<string>('reading')
  const [name, setName] = useState('')
  const [unit, setUnit] = useState('')
  const [least, setLeast] = useState('')
  const [greatest, setGreatest] = useState('')
  const [pressed, setPressed] = useState(false)
  const low = readLimit(least)
  const high = readLimit(greatest)
  const isReading = type === 'reading'
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (name.trim() === '' || low === undefined || high === undefined) return
        const sent = await press.send({
          stage: stage.id,
          type,
          name: name.trim(),
          ...(isReading ? { unit: unit.trim() || null, least: low, greatest: high } : {}),
        })
        if (!sent) return
        setName('')
        setUnit('')
        setLeast('')
        setGreatest('')
        setPressed(false)
      }}
    >
      <h3>Ask for another</h3>
      <SelectField
        label="Kind"
        value={type}
        onChange={setType}
        options={CheckType.options.map((value) => ({ value, label: types[value] }))}
      />
      <TextField
        label="Of what"
        value={name}
        onChange={setName}
        wrong={
          pressed && name.trim() === '' ? 'Say what: oil pressure, each side.' : press.wrong('name')
        }
      />
      {isReading && (
        <>
          <TextField label="Unit" value={unit} onChange={setUnit} placeholder="bar" />
          <TextField
            label="From"
            value={least}
            onChange={setLeast}
            wrong={
              pressed && low === undefined
                ? 'A number such as 3.1, or nothing.'
                : press.wrong('least')
            }
          />
          <TextField
            label="To"
            value={greatest}
            onChange={setGreatest}
            wrong={
              pressed && high === undefined
                ? 'A number such as 4.5, or nothing.'
                : press.wrong('greatest')
            }
            hint="Limits are inclusive."
          />
        </>
      )}
      <PressFoot press={press} lined label={label('check.add', { name: name.trim() })} />
    </form>
  )
}
