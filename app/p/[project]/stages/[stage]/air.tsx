'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Mark } from '@/app/_ui/mark.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { airAmiss, lastAir } from '@/lib/gate/start/air.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { dewMargin } from '@/lib/sums/dew-margin.ts'
import { ago } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { figure } from '@/lib/words/money.ts'
import { personName } from '@/lib/words/names.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

/** A figure that may be below nothing. */
function readDegrees(typed: string): number | null {
  const text = typed.trim().replace('−', '-')
  const read = readQuantity(text.replace(/^-/, ''))
  return read === null ? null : text.startsWith('-') ? -read : read
}

/** Air and surface at the panel: the last reading with its age and its margin, and the next one. */
export function Air({ stage }: { readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const press = usePress('air.record', 'Entered.', { stage: stage.id })
  const [air, setAir] = useState('')
  const [surface, setSurface] = useState('')
  const [humidity, setHumidity] = useState('')
  const [pressed, setPressed] = useState(false)
  const read = {
    air: readDegrees(air),
    surface: readDegrees(surface),
    humidity: readQuantity(humidity),
  }
  const last = lastAir(record, stage.id)
  const { locale } = reader
  const degrees = (value: number) => `${figure(value, locale, 1)}\u00a0°C`
  const foreseen =
    read.air === null || read.surface === null || read.humidity === null || read.humidity <= 1
      ? null
      : dewMargin(read.air, read.humidity, read.surface)
  const amiss = (typed: number | null, words: string, field: string) =>
    pressed && typed === null ? words : press.wrong(field)
  return (
    <section className="sheet stack">
      <Head
        title="Air and surface"
        note={`no older than ${figure(stage.airAgeMost ?? 0, locale, 0)} min`}
      />
      {last === undefined ? (
        <p className="soft">Not read yet.</p>
      ) : (
        <p>
          <Mark name={airAmiss(stage, last, reader.now) === null ? 'met' : 'refused'} /> Air{' '}
          <b>{degrees(last.air)}</b>, surface <b>{degrees(last.surface)}</b>, humidity{' '}
          <b>{figure(last.humidity, locale, 0)}&nbsp;%</b>: the surface stands{' '}
          {degrees(dewMargin(last.air, last.humidity, last.surface).margin)} above the dew point.{' '}
          <span className="small">
            {ago(last.takenAt, reader)}, {personName(last.by, reader.people)}
          </span>
        </p>
      )}
      {standing.actsFor(stage.party) && (
        <form
          className="stack"
          noValidate
          onSubmit={async (event) => {
            event.preventDefault()
            setPressed(true)
            if (read.air === null || read.surface === null || read.humidity === null) return
            if (!(await press.send({ stage: stage.id, ...read }))) return
            setAir('')
            setSurface('')
            setHumidity('')
            setPressed(false)
          }}
        >
          <TextField
            label="Air, °C"
            inputMode="decimal"
            value={air}
            onChange={setAir}
            wrong={amiss(read.air, 'Degrees such as 18.5, read at the panel.', 'air')}
          />
          <TextField
            label="Surface of the panel, °C"
            inputMode="decimal"
            value={surface}
            onChange={setSurface}
            wrong={amiss(read.surface, 'Degrees such as 17.', 'surface')}
          />
          <TextField
            label="Relative humidity, %"
            inputMode="decimal"
            value={humidity}
            onChange={setHumidity}
            wrong={amiss(read.humidity, 'Per cent such as 60.', 'humidity')}
          />
          {foreseen !== null && (
            <p role="status">
              Dew point {degrees(foreseen.dew)}: the surface stands{' '}
              <b>{degrees(foreseen.margin)}</b> above it{foreseen.passes ? '.' : ', too little.'}
              {foreseen.onTheLine && ' That is on the line: read again, or warm the panel.'}
            </p>
          )}
          <PressFoot press={press} lined label={label('air.record')} />
        </form>
      )}
    </section>
  )
}
