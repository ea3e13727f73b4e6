'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { cureEnds } from '@/lib/gate/cure-ends.ts'
import { linksFrom, metalReadingsOf } from '@/lib/gate/indexes.ts'
import { lagsFrom } from '@/lib/gate/lags-from.ts'
import type { Link, Stage } from '@/lib/record/entities/work.ts'
import type { Instant } from '@/lib/record/scalars.ts'
import { ago, moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { figure } from '@/lib/words/money.ts'
import { personName } from '@/lib/words/names.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

/** The metal's temperature while a coat cures, for a stage whose work is over and that something waits for; nothing once it has run. */
export function Metal({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useDesk()
  const end = lagsFrom(record, stage)
  if (end === null || stage.removedAt !== null) return null
  const log = metalReadingsOf(record.metalReadings, stage.id)
  const curing = linksFrom(record.links, stage.id).filter((link) => {
    const { until } = cureEnds(end, link.leastLagHours, link.curesAt, log)
    return link.curesAt !== null && (until === null || until > reader.now)
  })
  const [longest] = curing.toSorted((a, b) => b.leastLagHours - a.leastLagHours)
  return longest === undefined ? null : <Curing stage={stage} link={longest} end={end} />
}

function Curing({
  stage,
  link,
  end,
}: {
  readonly stage: Stage
  readonly link: Link
  readonly end: Instant
}) {
  const { record, reader, standing } = useDesk()
  const log = metalReadingsOf(record.metalReadings, stage.id)
  const { until } = cureEnds(end, link.leastLagHours, link.curesAt, log)
  const last = log.at(-1)
  const degrees = (value: number) => `${figure(value, reader.locale, 1)}\u00a0°C`
  const follower = record.stages.rows.get(link.to)
  const reads =
    standing.actsFor(stage.party) ||
    standing.managesLead ||
    (follower !== undefined && standing.actsFor(follower.party))
  return (
    <section className="sheet stack">
      <Head title="Metal while it cures" note={`at ${degrees(link.curesAt ?? 0)}`} />
      <p>
        {until === null ? (
          <b>Under 10 °C it does not cure.</b>
        ) : (
          <>
            Cured by <b>{moment(until, reader)}</b>
            {last === undefined ? ', by the clock.' : ', as the metal stands. An estimate.'}
          </>
        )}{' '}
        <span className="small">Cold metal lengthens it; warm metal never shortens it.</span>
      </p>
      {last !== undefined && (
        <p className="small">
          {degrees(last.celsius)}, {ago(last.takenAt, reader)}, {personName(last.by, reader.people)}
        </p>
      )}
      {reads && <ReadMetal stage={stage} />}
    </section>
  )
}

function ReadMetal({ stage }: { readonly stage: Stage }) {
  const press = usePress('metal.record', 'Entered.', { stage: stage.id })
  const [typed, setTyped] = useState('')
  const [pressed, setPressed] = useState(false)
  const text = typed.trim().replace('−', '-')
  const size = readQuantity(text.replace(/^-/, ''))
  const metal = size !== null && text.startsWith('-') ? -size : size
  return (
    <form
      className="stack tight"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (metal === null) return
        if (!(await press.send({ stage: stage.id, metal }))) return
        setTyped('')
        setPressed(false)
      }}
    >
      <TextField
        label="Metal, °C"
        inputMode="decimal"
        value={typed}
        onChange={setTyped}
        wrong={
          pressed && metal === null
            ? 'Degrees such as 14, read on the metal.'
            : press.wrong('metal')
        }
      />
      <PressFoot press={press} lined label={label('metal.record')} />
    </form>
  )
}
