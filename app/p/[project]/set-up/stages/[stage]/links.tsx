'use client'
import Link from 'next/link'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Stage, Link as StageLink } from '@/lib/record/entities/work.ts'
import { all } from '@/lib/record/table.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { figure } from '@/lib/words/money.ts'
import { stageName } from '@/lib/words/names.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

/** What a stage waits for, and what waits for it, with the lags by the clock. */
export function Links({ stage, sets }: { readonly stage: Stage; readonly sets: boolean }) {
  const { record } = useDesk()
  const links = all(record.links).filter((link) => link.removedAt === null)
  const before = links.filter((link) => link.to === stage.id)
  const after = links.filter((link) => link.from === stage.id)
  return (
    <section className="sheet stack">
      <Head title="Links" />
      <h3>Waits for</h3>
      {before.length === 0 && <p className="soft">Nothing: it may be the first.</p>}
      <ul className="ruled">
        {before.map((link) => (
          <LinkRow key={link.id} link={link} other={link.from} />
        ))}
      </ul>
      {after.length > 0 && <h3>Goes before</h3>}
      <ul className="ruled">
        {after.map((link) => (
          <LinkRow key={link.id} link={link} other={link.to} />
        ))}
      </ul>
      {sets && stage.state === 'planned' && <DrawLink stage={stage} />}
    </section>
  )
}

function LinkRow({ link, other }: { readonly link: StageLink; readonly other: string }) {
  const { record, reader, standing } = useDesk()
  const hours = (value: number) => `${figure(value, reader.locale)} h`
  const lags = [
    ...(link.leastLagHours > 0 ? [`at least ${hours(link.leastLagHours)} after its end`] : []),
    ...(link.greatestLagHours === null
      ? []
      : [`at most ${hours(link.greatestLagHours)} after its end`]),
  ]
  return (
    <li className="stack tight">
      <p className="way">
        <Link href={`/p/${record.id}/set-up/stages/${other}`}>{stageName(other, record)}</Link>
        {lags.length > 0 && <span className="small"> · {lags.join(', ')}, by the clock</span>}
      </p>
      {link.why !== null && <p className="small">{link.why}</p>}
      {standing.managesLead && record.stages.rows.get(link.to)?.state === 'planned' && (
        <DescribeLink link={link} />
      )}
      {standing.managesLead && (
        <ReasonFold name="link.remove" input={{ link: link.id }} label={label('link.remove')} />
      )}
    </li>
  )
}

function DescribeLink({ link }: { readonly link: StageLink }) {
  const press = usePress('link.describe', 'Saved.', { link: link.id })
  const [least, setLeast] = useState(String(link.leastLagHours))
  const [greatest, setGreatest] = useState(String(link.greatestLagHours ?? ''))
  const [why, setWhy] = useState(link.why ?? '')
  const [safety, setSafety] = useState(link.safety)
  const [cures, setCures] = useState(String(link.curesAt ?? ''))
  const read = (typed: string) => (typed.trim() === '' ? null : readQuantity(typed))
  const wrong = (typed: string) => typed.trim() !== '' && readQuantity(typed) === null
  return (
    <details>
      <summary>Its lags, and why it is there</summary>
      <form
        className="stack"
        noValidate
        onSubmit={(event) => {
          event.preventDefault()
          if ([least, greatest, cures].some(wrong)) return
          void press.send({
            link: link.id,
            leastLagHours: read(least) ?? 0,
            greatestLagHours: read(greatest),
            why: why.trim() || null,
            safety,
            curesAt: read(cures),
          })
        }}
      >
        <TextField
          label="At least, hours after its end"
          inputMode="decimal"
          value={least}
          onChange={setLeast}
          wrong={wrong(least) ? 'Hours such as 24.' : press.wrong('leastLagHours')}
        />
        <TextField
          label="At most, hours after its end"
          inputMode="decimal"
          value={greatest}
          onChange={setGreatest}
          wrong={wrong(greatest) ? 'Hours such as 72.' : press.wrong('greatestLagHours')}
        />
        <TextField label="Why" value={why} onChange={setWhy} />
        <TextField
          label="A cure, given for metal at °C"
          inputMode="decimal"
          value={cures}
          onChange={setCures}
          hint="Empty where it isn’t a cure. Colder metal then lengthens the wait."
          wrong={wrong(cures) ? 'Degrees such as 20.' : press.wrong('curesAt')}
        />
        <TickField
          label="Safety hangs on it: nobody concedes it"
          checked={safety}
          onChange={setSafety}
        />
        <PressFoot press={press} lined label={label('link.describe')} />
      </form>
    </details>
  )
}

function DrawLink({ stage }: { readonly stage: Stage }) {
  const { record, standing } = useDesk()
  const press = usePress('link.draw', {
    text: 'The link is drawn.',
    undo: undoMade('link', 'link', {
      name: 'link.remove',
      label: 'Take it back',
      reason: 'Drawn by mistake',
    }),
  })
  const [from, setFrom] = useState('')
  const [least, setLeast] = useState('')
  const [greatest, setGreatest] = useState('')
  const [pressed, setPressed] = useState(false)
  const others = all(record.stages)
    .filter(
      (other) =>
        other.id !== stage.id &&
        other.removedAt === null &&
        (standing.managesLead || other.party === standing.party),
    )
    .toSorted((a, b) => a.number - b.number)
  const leastRead = least.trim() === '' ? 0 : readQuantity(least)
  const greatestRead = greatest.trim() === '' ? undefined : readQuantity(greatest)
  return (
    <form
      className="stack"
      noValidate
      onSubmit={async (event) => {
        event.preventDefault()
        setPressed(true)
        if (from === '' || leastRead === null || greatestRead === null) return
        const sent = await press.send({
          from,
          to: stage.id,
          leastLagHours: leastRead,
          ...(greatestRead === undefined ? {} : { greatestLagHours: greatestRead }),
        })
        if (!sent) return
        setFrom('')
        setLeast('')
        setGreatest('')
        setPressed(false)
      }}
    >
      <h3>Make it wait for</h3>
      <SelectField
        label="Stage"
        value={from}
        onChange={setFrom}
        none="Choose the earlier stage"
        options={others.map(({ id, number, name }) => ({
          value: id,
          label: `${stageNumber(number)} · ${name}`,
        }))}
        wrong={pressed && from === '' ? 'Choose the stage that comes before.' : undefined}
      />
      <TextField
        label="At least, hours after its end"
        inputMode="decimal"
        value={least}
        onChange={setLeast}
        hint="Cure and drying, by the clock. Empty for none."
        wrong={pressed && leastRead === null ? 'Hours such as 24.' : press.wrong('leastLagHours')}
      />
      <TextField
        label="At most, hours after its end"
        inputMode="decimal"
        value={greatest}
        onChange={setGreatest}
        hint="A recoat window, from the data sheet. Empty for none."
        wrong={
          pressed && greatestRead === null ? 'Hours such as 72.' : press.wrong('greatestLagHours')
        }
      />
      <PressFoot press={press} lined label={label('link.draw')} />
    </form>
  )
}
