'use client'
import { useRouter } from 'next/navigation'
import { useState } from 'react'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { KeptSheet } from '@/app/_ui/press/kept-sheet.tsx'
import { partiesHere, useDesk } from '@/app/_ui/use-desk.ts'
import { all } from '@/lib/record/table.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'

/** Makes a handover ready: what goes, from whom, to whom, for which stage. */
export function PrepareForm({
  assemblies,
  to: askedTo,
  stage: askedStage,
}: {
  readonly assemblies: readonly string[]
  readonly to: string | undefined
  readonly stage: string | undefined
}) {
  const { record, reader, standing } = useDesk()
  const router = useRouter()
  const press = usePress('handover.prepare', {
    text: 'Prepared. Nothing moves before it is released.',
    undo: undoMade('handover', 'handover', {
      name: 'handover.takeBack',
      label: 'Take it back',
      reason: 'Prepared by mistake',
    }),
  })
  const givers = partiesHere(record).filter(
    (party) => standing.actsFor(party.id) || standing.managesLead,
  )
  const [from, setFrom] = useState<string>(
    record.assemblies.rows.get(assemblies[0] ?? '')?.custodian ?? standing.party,
  )
  const [picked, setPicked] = useState<ReadonlySet<string>>(new Set(assemblies))
  const [kept, setKept] = useState(false)
  const [to, setTo] = useState(askedTo ?? '')
  const [stage, setStage] = useState(askedStage ?? '')
  const [condition, setCondition] = useState('')
  const [care, setCare] = useState('')
  const [pressed, setPressed] = useState(false)
  const there = all(record.assemblies).filter(
    (assembly) => assembly.custodian === from && assembly.host === null,
  )
  const going = there.filter(({ id }) => picked.has(id))
  const takers = partiesHere(record).filter(
    (party) => party.id !== from && party.role !== 'observer',
  )
  const stages = all(record.stages).filter(
    (row) => row.party === to && row.removedAt === null && row.state === 'planned',
  )

  const prepare = async () => {
    setPressed(true)
    if (going.length === 0 || to === '') return
    const outcome = await press.command.send({
      assemblies: going.map(({ id }) => id),
      to,
      condition,
      care,
      ...(stage === '' ? {} : { stage }),
      ...(from === standing.party ? {} : { told: from }),
    })
    setKept(outcome.status === 'kept')
    if (outcome.status !== 200) return
    const made = outcome.changed
      .flatMap(({ entities }) => entities)
      .find((entity) => entity.kind === 'handover' && entity.state === 'prepared')
    router.push(`/p/${record.id}/handovers${made === undefined ? '' : `/${made.id}`}`)
  }

  if (kept) return <KeptSheet href={`/p/${record.id}/handovers`} label="All handovers" />
  return (
    <form
      className="sheet stack"
      onSubmit={(event) => {
        event.preventDefault()
        void prepare()
      }}
    >
      <Head title="Prepare a handover" />
      {givers.length > 1 && (
        <SelectField
          label="From"
          value={from}
          onChange={setFrom}
          options={givers.map(({ id, name }) => ({ value: id, label: name }))}
          hint={
            from === standing.party
              ? undefined
              : `Told by phone: marked so until ${partyName(from, record)} confirms it.`
          }
        />
      )}
      <fieldset className="picks">
        <legend>What goes?</legend>
        {there.length === 0 && (
          <EmptyState title={`${partyName(from, record)} has custody of nothing that can go.`} />
        )}
        {there.map((assembly) => (
          <TickField
            key={assembly.id}
            label={`${assembly.name}${assembly.pieces > 1 ? `, ${assembly.pieces} pieces` : ''}`}
            checked={picked.has(assembly.id)}
            onChange={(on) => {
              const next = new Set(picked)
              if (on) next.add(assembly.id)
              else next.delete(assembly.id)
              setPicked(next)
            }}
          />
        ))}
        {pressed && going.length === 0 && <p className="wrong">Tick what goes.</p>}
      </fieldset>
      <SelectField
        label="To"
        value={to}
        onChange={setTo}
        none="Choose who receives it"
        options={takers.map(({ id, name }) => ({ value: id, label: name }))}
        wrong={pressed && to === '' ? 'Choose who receives it.' : press.wrong('to')}
      />
      {stages.length > 0 && (
        <SelectField
          label="For which stage of theirs"
          value={stage}
          onChange={setStage}
          none="None in particular"
          options={stages.map(({ id, number, name }) => ({
            value: id,
            label: `${stageNumber(number)} · ${name}`,
          }))}
        />
      )}
      <TextField
        label="In what condition is it?"
        rows={2}
        value={condition}
        onChange={setCondition}
      />
      <TextField label="How to treat it" rows={2} value={care} onChange={setCare} />
      <PressFoot
        press={press}
        label={label('handover.prepare')}
        note={`Nothing moves yet: ${partyName(from, record, reader)} still ${
          from === reader.view.party ? 'have' : 'has'
        } to release it.`}
      />
    </form>
  )
}
