'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { label } from '@/lib/words/labels.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

interface Line {
  readonly id: number
  readonly panel: string
  readonly point: string
  readonly film: string
}
const aLine = (id: number, panel: string, point: string): Line => ({ id, panel, point, film: '' })

/** Enters film readings, panel after panel, with the gauge that reads on that metal. */
export function FilmForm({
  assembly,
  panels,
}: {
  readonly assembly: Assembly
  /** Panels that were read before: offered again, so that before and after meet. */
  readonly panels: readonly string[]
}) {
  const press = usePress('film.record', 'The readings are entered.', { assembly: assembly.id })
  const [metal, setMetal] = useState('steel')
  const [gauge, setGauge] = useState('')
  const [zeroed, setZeroed] = useState(false)
  const [lines, setLines] = useState<readonly Line[]>([aLine(0, panels[0] ?? '', '1')])
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    setMetal(input.text('metal') || 'steel')
    setGauge(input.text('gauge'))
    setZeroed(input.is('zeroed', true))
  })
  const read = lines.map((line) => ({ ...line, microns: readQuantity(line.film) }))
  const whole = read.flatMap(({ panel, point, microns }) =>
    microns === null || panel.trim() === '' || point.trim() === ''
      ? []
      : [{ panel: panel.trim(), point: point.trim(), microns }],
  )
  const change = (id: number, field: 'panel' | 'point' | 'film') => (value: string) =>
    setLines((now) => now.map((line) => (line.id === id ? { ...line, [field]: value } : line)))
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (whole.length !== lines.length) return
        const done = await press.send({
          assembly: assembly.id,
          metal,
          method: metal === 'steel' ? 'magnetic' : 'eddy current',
          gauge: gauge.trim() === '' ? null : gauge.trim(),
          zeroed,
          readings: whole,
        })
        if (!done) return
        setLines([aLine(0, panels[0] ?? '', '1')])
        setPressed(false)
      }}
    >
      <SelectField
        label="Metal, and so the gauge"
        value={metal}
        onChange={setMetal}
        options={[
          { value: 'steel', label: 'Steel: magnetic gauge' },
          { value: 'aluminium', label: 'Aluminium: eddy-current gauge' },
        ]}
        hint="Neither gauge reads on the other’s metal."
        wrong={press.wrong('method')}
      />
      <TextField label="Gauge" value={gauge} onChange={setGauge} />
      <TickField
        label="Set to nought today on the same metal"
        hint="Without it the readings are kept and prove nothing."
        checked={zeroed}
        onChange={setZeroed}
      />
      {read.map((line, i) => (
        <fieldset key={line.id} className="film-line">
          <legend className="small">Reading {i + 1}</legend>
          <TextField
            label="Panel"
            value={line.panel}
            onChange={change(line.id, 'panel')}
            list={panels}
            wrong={pressed && line.panel.trim() === '' ? 'Name the panel.' : undefined}
          />
          <TextField
            label="Point"
            value={line.point}
            onChange={change(line.id, 'point')}
            wrong={pressed && line.point.trim() === '' ? 'Name the point.' : undefined}
          />
          <TextField
            label="Film, µm"
            inputMode="decimal"
            value={line.film}
            onChange={change(line.id, 'film')}
            wrong={pressed && line.microns === null ? 'Micrometres such as 118.' : undefined}
          />
        </fieldset>
      ))}
      <button
        type="button"
        className="btn btn-line"
        onClick={() =>
          setLines((now) => {
            const last = now.at(-1)
            const next = Number(last?.point)
            const point = Number.isInteger(next) ? String(next + 1) : ''
            return [...now, aLine((last?.id ?? 0) + 1, last?.panel ?? '', point)]
          })
        }
      >
        Another reading
      </button>
      <PressFoot press={press} lined label={label('film.record', { name: assembly.name })} />
    </form>
  )
}
