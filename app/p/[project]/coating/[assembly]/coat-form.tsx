'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import type { Desk } from '@/app/_ui/use-desk.ts'
import { lastAir } from '@/lib/gate/start/air.ts'
import { CoatKind } from '@/lib/record/entities/coating.ts'
import type { Assembly } from '@/lib/record/entities/things.ts'
import { all } from '@/lib/record/table.ts'
import { instantAt, wallTime } from '@/lib/record/zoned-time.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { atStart } from '@/lib/words/names.ts'

const NOTHING = {
  name: '',
  batch: '',
  ratio: '',
  thinner: '',
  coats: '1',
  keyedWith: '',
  colour: '',
  remark: '',
}

/** Records a coat: what, when its last coat ended, and as much of the rest as is known. What is left empty is kept as not recorded. */
export function CoatForm({
  assembly,
  desk: { record, reader, standing },
  stage: asked,
  product: askedProduct,
}: {
  readonly assembly: Assembly
  readonly desk: Desk
  readonly stage: string | null
  readonly product: string | null
}) {
  const stages = all(record.stages).filter(
    (one) =>
      one.removedAt === null &&
      one.assemblies.includes(assembly.id) &&
      one.state !== 'planned' &&
      one.state !== 'reopened' &&
      standing.actsFor(one.party),
  )
  const first = stages.find(({ id }) => id === asked)
  const press = usePress('coat.record', 'The coat is recorded.', { assembly: assembly.id })
  const [product, setProduct] = useState<string>(first?.lays ?? askedProduct ?? 'epoxy')
  const [stage, setStage] = useState<string>(first?.id ?? '')
  const [ended, setEnded] = useState(() => wallTime(first?.endedAt ?? reader.now, reader.timeZone))
  const [said, setSaid] = useState(NOTHING)
  const set = (field: keyof typeof NOTHING) => (value: string) =>
    setSaid((now) => ({ ...now, [field]: value }))
  useRefusedInput(press.command, (input) => {
    setProduct(input.text('product'))
    setStage(input.text('stage'))
    setSaid({
      name: input.text('name'),
      batch: input.text('batch'),
      ratio: input.text('ratio'),
      thinner: input.text('thinner'),
      coats: input.text('coats'),
      keyedWith: input.text('keyedWith'),
      colour: input.text('colour'),
      remark: input.text('remark'),
    })
  })
  const colours = all(record.colours).filter(({ removedAt }) => removedAt === null)
  const coats = /^\d{1,2}$/.test(said.coats.trim()) ? Number(said.coats) : null
  const words = (text: string): string | null => (text.trim() === '' ? null : text.trim())
  const send = async () => {
    const endedAt = instantAt(ended, reader.timeZone)
    const laidIn = stages.find(({ id }) => id === stage)
    const air = laidIn === undefined ? undefined : lastAir(record, laidIn.id)
    if (coats === null || endedAt === null) return
    const done = await press.send({
      assembly: assembly.id,
      product,
      ...(laidIn === undefined ? {} : { stage: laidIn.id }),
      ...(air === undefined ? {} : { air: air.id }),
      name: words(said.name),
      batch: words(said.batch),
      ratio: words(said.ratio),
      thinner: words(said.thinner),
      coats,
      endedAt,
      keyedWith: words(said.keyedWith),
      ...(said.colour === '' || product !== 'colour' ? {} : { colour: said.colour }),
      remark: said.remark.trim(),
    })
    if (done) setSaid(NOTHING)
  }
  return (
    <form
      className="stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        void send()
      }}
    >
      <SelectField
        label="What was laid"
        value={product}
        onChange={setProduct}
        options={CoatKind.options.map((value) => ({ value, label: atStart(value) }))}
      />
      <TextField
        label="Its last coat ended at"
        type="datetime-local"
        value={ended}
        onChange={setEnded}
        hint="By the shop’s clock. Windows and cure count from here, not from the signature."
        wrong={press.wrong('endedAt')}
      />
      <SelectField
        label="Laid in stage"
        value={stage}
        onChange={setStage}
        none="None of them"
        options={stages.map(({ id, number, name }) => ({
          value: id,
          label: `${stageNumber(number)} · ${name}`,
        }))}
        wrong={press.wrong('assembly')}
      />
      {product === 'colour' && (
        <SelectField
          label="Which colour"
          value={said.colour}
          onChange={set('colour')}
          none="Not recorded"
          options={colours.map(({ id, name }) => ({ value: id, label: name }))}
          wrong={press.wrong('colour')}
        />
      )}
      <TextField label="Batch" value={said.batch} onChange={set('batch')} />
      <TextField
        label="Coats"
        inputMode="numeric"
        value={said.coats}
        onChange={set('coats')}
        wrong={coats === null ? 'A whole number of coats, such as 3.' : press.wrong('coats')}
      />
      <TextField
        label="How the ground was keyed"
        value={said.keyedWith}
        onChange={set('keyedWith')}
        hint="Grit and by what, such as 320, by hand. Empty where it went on within its window."
      />
      <details>
        <summary>Product, ratio, thinner, remark</summary>
        <div className="stack tight">
          <TextField label="Product’s name" value={said.name} onChange={set('name')} />
          <TextField label="Mixed" value={said.ratio} onChange={set('ratio')} placeholder="2 : 1" />
          <TextField label="Thinner" value={said.thinner} onChange={set('thinner')} />
          <TextField label="Remark" rows={2} value={said.remark} onChange={set('remark')} />
        </div>
      </details>
      <PressFoot press={press} label={label('coat.record', { name: assembly.name })} />
    </form>
  )
}
