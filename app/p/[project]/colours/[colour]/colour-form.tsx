'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { formulaOf } from '@/lib/coating/formula.ts'
import type { Colour } from '@/lib/record/entities/coating.ts'
import { label } from '@/lib/words/labels.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

interface Row {
  readonly id: number
  readonly name: string
  readonly grams: string
  readonly batch: string
}
const FIELDS = ['name', 'code', 'variant', 'batch', 'gun', 'keepsake'] as const
type Field = (typeof FIELDS)[number]
const labels: { readonly [F in Field]: string } = {
  name: 'Name of the colour',
  code: 'Code, if it has one',
  variant: 'Variant',
  batch: 'Batch of the mix',
  gun: 'Gun set-up',
  keepsake: 'Keepsake tin',
}
const hints: { readonly [F in Field]?: string } = {
  gun: 'Gun, needle, pressure, overlap: the panels are shot with the same.',
  keepsake: 'Where it stands, and how much is in it.',
}

/** A colour as it was mixed: name, formula by weight, batch, gun set-up, keepsake. */
export function ColourForm({ colour }: { readonly colour: Colour | null }) {
  const { record } = useDesk()
  const press = usePress(
    colour === null ? 'colour.add' : 'colour.describe',
    colour === null ? 'The colour is kept.' : 'Saved.',
    colour === null ? {} : { colour: colour.id },
  )
  const [said, setSaid] = useState<{ readonly [F in Field]: string }>({
    name: colour?.name ?? '',
    code: colour?.code ?? '',
    variant: colour?.variant ?? '',
    batch: colour?.batch ?? '',
    gun: colour?.gun ?? '',
    keepsake: colour?.keepsake ?? '',
  })
  const [rows, setRows] = useState<readonly Row[]>(() =>
    (colour === null ? [] : formulaOf(record, colour.id)).map((tinter, id) => ({
      id,
      name: tinter.name,
      grams: String(tinter.grams),
      batch: tinter.batch ?? '',
    })),
  )
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) =>
    setSaid({
      name: input.text('name'),
      code: input.text('code'),
      variant: input.text('variant'),
      batch: input.text('batch'),
      gun: input.text('gun'),
      keepsake: input.text('keepsake'),
    }),
  )
  const tinters = rows.map((row) => ({ ...row, weight: readQuantity(row.grams) }))
  const whole = tinters.flatMap(({ name, weight, batch }) =>
    name.trim() === '' || weight === null || weight <= 0
      ? []
      : [{ name: name.trim(), grams: weight, batch: batch.trim() === '' ? null : batch.trim() }],
  )
  const or = (text: string): string | null => (text.trim() === '' ? null : text.trim())
  const change = (id: number, field: 'name' | 'grams' | 'batch') => (value: string) =>
    setRows((now) => now.map((row) => (row.id === id ? { ...row, [field]: value } : row)))
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (said.name.trim() === '' || whole.length !== rows.length) return
        const done = await press.send({
          ...(colour === null ? {} : { colour: colour.id }),
          name: said.name.trim(),
          code: or(said.code),
          variant: or(said.variant),
          batch: or(said.batch),
          gun: or(said.gun),
          keepsake: or(said.keepsake),
          tinters: whole,
        })
        if (done) setPressed(false)
      }}
    >
      {FIELDS.map((field) => (
        <TextField
          key={field}
          label={labels[field]}
          hint={hints[field]}
          value={said[field]}
          onChange={(value) => setSaid((now) => ({ ...now, [field]: value }))}
          wrong={
            field === 'name' && pressed && said.name.trim() === ''
              ? 'Name the colour.'
              : press.wrong(field)
          }
        />
      ))}
      {tinters.map((row, i) => (
        <fieldset key={row.id} className="film-line">
          <legend className="small">Tinter {i + 1}</legend>
          <TextField
            label="Tinter"
            value={row.name}
            onChange={change(row.id, 'name')}
            wrong={pressed && row.name.trim() === '' ? 'Name it.' : undefined}
          />
          <TextField
            label="Grams"
            inputMode="decimal"
            value={row.grams}
            onChange={change(row.id, 'grams')}
            wrong={
              pressed && (row.weight === null || row.weight <= 0) ? 'Grams such as 9.6.' : undefined
            }
          />
          <TextField label="Batch" value={row.batch} onChange={change(row.id, 'batch')} />
          <button
            type="button"
            className="btn btn-line btn-small"
            onClick={() => setRows((now) => now.filter(({ id }) => id !== row.id))}
          >
            Take tinter {i + 1} off
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        className="btn btn-line"
        onClick={() =>
          setRows((now) => [
            ...now,
            { id: (now.at(-1)?.id ?? -1) + 1, name: '', grams: '', batch: '' },
          ])
        }
      >
        Another tinter
      </button>
      <PressFoot
        press={press}
        lined
        label={label(colour === null ? 'colour.add' : 'colour.describe')}
      />
    </form>
  )
}
