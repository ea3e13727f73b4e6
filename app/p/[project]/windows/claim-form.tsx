'use client'
import { useState } from 'react'
import { PickList } from '@/app/_ui/form/pick-list.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { SelectField, TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { Card, Tag } from '@/app/_ui/paper.tsx'
import { undoMade } from '@/app/_ui/press/done-toast.ts'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { StageChip } from '@/app/_ui/stage-chip.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { leadOf } from '@/lib/record/actor.ts'
import type { Assembly, OpenWindow } from '@/lib/record/entities/things.ts'
import { Instant } from '@/lib/record/scalars.ts'
import { all } from '@/lib/record/table.ts'
import { instantAt, wallTime } from '@/lib/record/zoned-time.ts'
import { workEnds } from '@/lib/shop/work-ends.ts'
import { exactSpan } from '@/lib/words/dates.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { hours } from '@/lib/words/money.ts'
import { atStart, partyName } from '@/lib/words/names.ts'

const OTHER = 'other'

const laterOf = (a: Instant, b: Instant): Instant => [a, b].toSorted().at(-1) ?? a

/** Claims a slot for the assembly in a bay: in an open window, where it is agreed at once, or at another time, which the lead is asked. */
export function ClaimForm({
  assembly,
  window: askedWindow,
  stage: askedStage,
}: {
  readonly assembly: Assembly
  readonly window: string | undefined
  readonly stage: string | undefined
}) {
  const { record, reader, standing } = useDesk()
  const { bays, shops } = useProject()
  const press = usePress(
    'slot.claim',
    {
      text: 'Claimed.',
      undo: undoMade('slot', 'slot', {
        name: 'slot.release',
        label: 'Give it back',
        reason: 'Claimed by mistake',
      }),
    },
    { assembly: assembly.id },
  )
  const own = record.parties.rows.get(standing.party)?.shop ?? null
  const windows = all(record.openWindows)
    .filter(
      (open) => open.assembly === assembly.id && open.closedAt === null && open.to > reader.now,
    )
    .toSorted((a, b) => a.from.localeCompare(b.from))
  const usable = bays.filter(
    (bay) =>
      bay.retiredAt === null && (bay.shop === own || windows.some((open) => open.bay === bay.id)),
  )
  const stages = all(record.stages).filter(
    (stage) =>
      stage.party === standing.party &&
      stage.removedAt === null &&
      stage.needsBay &&
      stage.state !== 'signed off' &&
      (stage.assemblies.includes(assembly.id) || stage.host === assembly.id),
  )
  const first = windows.find(({ id }) => id === askedWindow) ?? windows[0]
  const ownShop = shops.find(({ id }) => id === own)
  const zone = ownShop?.timeZone ?? reader.timeZone
  /** As much of a window as the stage's work needs at most; all of it where nobody has said. */
  const wall = (open: OpenWindow | undefined, forStage: string) => {
    if (open === undefined) return { from: '', to: '' }
    const from = wallTime(laterOf(open.from, reader.now), zone)
    const end = wallTime(open.to, zone)
    const asked = record.stages.rows.get(forStage)
    const hoursOfIt = asked?.hoursMost ?? asked?.hoursLikely ?? null
    const enough =
      hoursOfIt === null || ownShop === undefined ? end : workEnds(from, hoursOfIt, ownShop)
    const fits = enough < end
    return { from, to: fits ? enough : end }
  }
  const firstStage = stages.find(({ id }) => id === askedStage)?.id ?? stages[0]?.id ?? ''
  const [picked, setPicked] = useState<string>(first?.id ?? OTHER)
  const [span, setSpan] = useState(wall(first, firstStage))
  const [bay, setBay] = useState(first?.bay ?? usable[0]?.id ?? '')
  const [stage, setStage] = useState<string>(firstStage)
  const [pressed, setPressed] = useState(false)
  useRefusedInput(press.command, (input) => {
    const asked = {
      from: Instant.safeParse(input.text('from')),
      to: Instant.safeParse(input.text('to')),
    }
    if (!asked.from.success || !asked.to.success) return
    const [from, to] = [asked.from.data, asked.to.data]
    setPicked(windows.find((open) => open.from <= from && to <= open.to)?.id ?? OTHER)
    setSpan({ from: wallTime(from, zone), to: wallTime(to, zone) })
    setBay(bays.find(({ id }) => input.is('bay', id))?.id ?? '')
    setStage(input.text('stage'))
  })

  // A field shows minutes; where it stands at the window's own end, that end is meant to the moment.
  const chosen = windows.find(({ id }) => id === picked)
  const exact = (typed: string, end: Instant | undefined) =>
    end !== undefined && wallTime(end, zone) === typed ? end : instantAt(typed, zone)
  const from = exact(span.from, chosen?.from)
  const to = exact(span.to, chosen?.to)
  const faults = {
    from: from === null ? 'Give the day and the time it begins.' : undefined,
    to:
      to === null
        ? 'Give the day and the time it ends.'
        : from !== null && to <= from
          ? 'It ends before it begins: give a later end.'
          : undefined,
    bay: bay === '' ? 'Choose the bay. Your shop’s set-up adds bays.' : undefined,
  }
  const spanWords = from === null || to === null || to <= from ? null : exactSpan(from, to, reader)
  const within =
    from !== null &&
    to !== null &&
    windows.some(
      (open) => open.from <= from && to <= open.to && (open.bay === null || open.bay === bay),
    )
  const atOnce = within || leadOf(record)?.id === standing.party
  const stageRow = record.stages.rows.get(stage)

  const claim = () => {
    setPressed(true)
    const shop = bays.find(({ id }) => id === bay)?.shop
    if (from === null || to === null || to <= from || shop === undefined) return
    void press.send({
      assembly: assembly.id,
      bay,
      shop,
      from,
      to,
      ...(stage === '' ? {} : { stage }),
    })
  }

  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        claim()
      }}
    >
      {stageRow !== undefined && (
        <Card number={stageRow.number} title={stageRow.name}>
          <div className="stack tight">
            <div className="row">
              <Tag>{assembly.name}</Tag>
              <StageChip stage={stageRow} />
            </div>
            {stageRow.hoursLikely !== null && (
              <p>
                Needs a bay for some <b>{hours(stageRow.hoursLikely, reader.locale)}</b> of work.
              </p>
            )}
          </div>
        </Card>
      )}
      <PickList
        label="When"
        value={picked}
        onChange={(value) => {
          setPicked(value)
          const open = windows.find(({ id }) => id === value)
          if (open === undefined) return
          setSpan(wall(open, stage))
          if (open.bay !== null) setBay(open.bay)
        }}
        options={[
          ...windows.map((open) => ({
            value: open.id,
            title: exactSpan(open.from, open.to, reader),
            beside: 'open window',
            text: `Agreed at once${open.bay === null ? '' : `, in ${bays.find(({ id }) => id === open.bay)?.name ?? 'its bay'}`}. Take part of it below.`,
          })),
          {
            value: OTHER,
            title: 'Another time',
            text: `${atStart(partyName(leadOf(record)?.id ?? null, record, reader))} ${
              leadOf(record)?.id === standing.party ? 'are the lead: agreed at once.' : 'is asked.'
            }`,
          },
        ]}
      />
      <section className="sheet stack">
        <div className="cols cols-2">
          <TextField
            label="From"
            type="datetime-local"
            value={span.from}
            onChange={(value) => setSpan({ ...span, from: value })}
            wrong={pressed ? (faults.from ?? press.wrong('from')) : undefined}
            hint={`By the clock on the wall, ${zone.replaceAll('_', ' ')}`}
          />
          <TextField
            label="To"
            type="datetime-local"
            value={span.to}
            onChange={(value) => setSpan({ ...span, to: value })}
            wrong={pressed ? (faults.to ?? press.wrong('to')) : undefined}
          />
        </div>
        <SelectField
          label="Bay"
          value={bay}
          onChange={setBay}
          none="Choose a bay"
          options={usable.map(({ id, name, shop }) => ({
            value: id,
            label: `${name} · ${shops.find((candidate) => candidate.id === shop)?.name ?? ''}`,
          }))}
          wrong={pressed ? (faults.bay ?? press.wrong('bay')) : undefined}
        />
        <SelectField
          label="For the stage"
          value={stage}
          onChange={setStage}
          none="No stage in particular"
          options={stages.map(({ id, number, name }) => ({
            value: id,
            label: `${stageNumber(number)} · ${name}`,
          }))}
          wrong={press.wrong('stage')}
        />
        {press.command.done && (
          <p role="status">
            <i className="mark m-met" aria-hidden="true" />{' '}
            <b>
              {atOnce
                ? 'Agreed. It stands in the diary.'
                : 'Asked. It stands in the diary as asked.'}
            </b>
          </p>
        )}
        <PressFoot
          press={press}
          label={spanWords === null ? 'Claim' : `Claim ${spanWords}`}
          note={
            atOnce
              ? 'It is agreed at once: from then on nobody else can take it.'
              : `${partyName(leadOf(record)?.id ?? null, record)} as lead agrees or answers. Until then it is a claim, and an agreed slot goes before it.`
          }
        />
      </section>
    </form>
  )
}
