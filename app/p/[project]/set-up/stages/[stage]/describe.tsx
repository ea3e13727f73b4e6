'use client'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { TickSet } from '@/app/_ui/form/tick-set.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Head } from '@/app/_ui/paper.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { all } from '@/lib/record/table.ts'
import { cautionFor, everyHazard } from '@/lib/words/cautions.ts'
import { label } from '@/lib/words/labels.ts'
import { readQuantity } from '@/lib/words/read-amount.ts'

const LISTS = {
  assemblies: 'Works on',
  fits: 'Fits, when the work ends',
  removes: 'Takes off',
  needsFitted: 'Must be fitted before',
  needsOff: 'Must be off before',
} as const
type List = keyof typeof LISTS
const lists: readonly List[] = ['assemblies', 'fits', 'removes', 'needsFitted', 'needsOff']

const HOURS = {
  hoursLeast: 'Hours, least',
  hoursLikely: 'Hours, likely',
  hoursMost: 'Hours, most',
} as const
type HourField = keyof typeof HOURS
const hourFields: readonly HourField[] = ['hoursLeast', 'hoursLikely', 'hoursMost']

const HAZARDS = everyHazard.map((value) => ({ value, label: cautionFor(value).title }))

const typedHours = (stage: Stage, field: HourField): string => String(stage[field] ?? '')
/** Null for an empty field; undefined where it is no number. */
function readHours(typed: string): number | null | undefined {
  if (typed.trim() === '') return null
  return readQuantity(typed) ?? undefined
}

/** What is said of a stage: who does it, on what, how long, what it needs and gives. */
export function Describe({ stage }: { readonly stage: Stage }) {
  const { record, standing } = useDesk()
  const press = usePress('stage.describe', 'Saved.', { stage: stage.id })
  const planned = stage.state === 'planned'
  const lead = standing.managesLead
  const [name, setName] = useState(stage.name)
  const [party, setParty] = useState<string>(stage.party)
  const [group, setGroup] = useState(stage.group ?? '')
  const [things, setThings] = useState<{ readonly [L in List]: readonly string[] }>(() => ({
    assemblies: stage.assemblies,
    fits: stage.fits,
    removes: stage.removes,
    needsFitted: stage.needsFitted,
    needsOff: stage.needsOff,
  }))
  const [host, setHost] = useState<string>(stage.host ?? '')
  const [hours, setHours] = useState<{ readonly [H in HourField]: string }>(() => ({
    hoursLeast: typedHours(stage, 'hoursLeast'),
    hoursLikely: typedHours(stage, 'hoursLikely'),
    hoursMost: typedHours(stage, 'hoursMost'),
  }))
  const [needsBay, setNeedsBay] = useState(stage.needsBay)
  const [exclusive, setExclusive] = useState(stage.exclusive)
  const [safety, setSafety] = useState(stage.safety)
  const [caution, setCaution] = useState(stage.caution ?? '')
  const [hazards, setHazards] = useState<readonly string[]>(stage.hazards)
  const [order, setOrder] = useState<string>(stage.changeOrder ?? '')
  const [handoverTo, setHandoverTo] = useState<string>(stage.handoverTo ?? '')
  const [countersigns, setCountersigns] = useState<readonly string[]>(stage.countersigns)
  const choices = all(record.assemblies).map(({ id, name: words }) => ({ value: id, label: words }))
  const parties = partiesHere(record)
    .filter(({ role }) => role !== 'observer')
    .map(({ id, name: words }) => ({ value: id, label: words }))
  const orders = all(record.changeOrders).filter((row) => row.party === stage.party)

  const save = () => {
    const read = hourFields.map((field) => readHours(hours[field]))
    if (name.trim() === '' || read.includes(undefined)) return
    const [hoursLeast = null, hoursLikely = null, hoursMost = null] = read
    const loose = { group: group.trim() || null, hoursLeast, hoursLikely, hoursMost }
    if (!planned) {
      void press.send({ stage: stage.id, ...loose })
      return
    }
    void press.send({
      stage: stage.id,
      ...loose,
      name: name.trim(),
      ...Object.fromEntries(lists.map((list) => [list, [...things[list]]])),
      host: host || null,
      needsBay,
      exclusive,
      caution: caution.trim() || null,
      hazards: everyHazard.filter((hazard) => hazards.includes(hazard)),
      handoverTo: handoverTo || null,
      ...(safety || lead ? { safety } : {}),
      ...(order === '' && !lead ? {} : { changeOrder: order || null }),
      ...(lead ? { party, countersigns: [...countersigns] } : {}),
    })
  }

  return (
    <form
      className="sheet stack"
      noValidate
      onSubmit={(event) => {
        event.preventDefault()
        save()
      }}
    >
      <Head title="What it is" />
      <TextField
        label="Name"
        value={name}
        onChange={setName}
        disabled={!planned}
        wrong={name.trim() === '' ? 'Say what is done.' : press.wrong('name')}
      />
      <SelectField
        label="Whose work"
        value={party}
        onChange={setParty}
        disabled={!planned || !lead}
        options={parties}
        wrong={press.wrong('party')}
      />
      <TextField
        label="Group"
        value={group}
        onChange={setGroup}
        hint="Stages of one group stand together: paint, trim, brakes."
      />
      {hourFields.map((field) => (
        <TextField
          key={field}
          label={HOURS[field]}
          inputMode="decimal"
          value={hours[field]}
          onChange={(typed) => setHours({ ...hours, [field]: typed })}
          wrong={
            readHours(hours[field]) === undefined
              ? 'Hours such as 5.5, or nothing.'
              : press.wrong('hours')
          }
        />
      ))}
      {planned && (
        <>
          {lists.map((list) => (
            <TickSet
              key={list}
              label={LISTS[list]}
              choices={choices}
              picked={things[list]}
              onChange={(picked) => setThings({ ...things, [list]: picked })}
            />
          ))}
          <SelectField
            label="Fitted to"
            value={host}
            onChange={setHost}
            none="Nothing"
            options={choices}
            wrong={press.wrong('host')}
          />
          <TickField label="Needs a bay" checked={needsBay} onChange={setNeedsBay} />
          <TickField
            label="Nobody else works on these meanwhile"
            checked={exclusive}
            onChange={setExclusive}
          />
          <TickField
            label="Bears on safety"
            hint="Brakes, steering, restraints, structure, fuel: nothing is conceded here. Only the lead can say that it doesn’t."
            checked={safety}
            onChange={setSafety}
          />
          <TextField
            label="Caution"
            rows={2}
            value={caution}
            onChange={setCaution}
            hint="Short. The maker’s data sheet, local rules and licensed practice go before it."
          />
          <TickSet
            label="Hazards"
            choices={HAZARDS}
            picked={hazards}
            onChange={setHazards}
            hint="Their cautions stand on the card, and their precautions are ticked before it starts."
          />
          <SelectField
            label="Brought by change order"
            value={order}
            onChange={setOrder}
            none="None: it is in the estimate"
            options={orders.map(({ id, number, title }) => ({
              value: id,
              label: `${number} · ${title}`,
            }))}
            wrong={press.wrong('changeOrder')}
          />
          <SelectField
            label="Ends with a handover to"
            value={handoverTo}
            onChange={setHandoverTo}
            none="Nobody"
            options={parties.filter(({ value }) => value !== party)}
            wrong={press.wrong('handoverTo')}
          />
          {lead && (
            <TickSet
              label="Countersigned by"
              choices={parties.filter(({ value }) => value !== party)}
              picked={countersigns}
              onChange={setCountersigns}
            />
          )}
        </>
      )}
      <PressFoot press={press} label={label('stage.describe')} />
    </form>
  )
}
