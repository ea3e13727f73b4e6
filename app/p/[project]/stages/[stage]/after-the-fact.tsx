'use client'
import { useState } from 'react'
import { ReasonForm } from '@/app/_ui/form/reason-form.tsx'
import { TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import { instantAt, wallTime } from '@/lib/record/zoned-time.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName } from '@/lib/words/names.ts'

/** Lesser presses, each with a reason: what was pressed by mistake, what ended at another time, what was done outside the gate. */
export function AfterTheFact({ stage }: { readonly stage: Stage }) {
  const { standing } = useDesk()
  const own = standing.actsFor(stage.party)
  if ((!own && !standing.managesLead) || stage.removedAt !== null) return null
  const begun = stage.state !== 'planned' && stage.state !== 'reopened'
  const reopens =
    (standing.managesFor(stage.party) || standing.managesLead) &&
    (stage.state === 'signed off' || stage.state === 'in doubt')
  const takesBack =
    own && (stage.state === 'in work' || stage.state === 'ended' || stage.state === 'signed off')
  const corrects = own && stage.endedAt !== null && begun
  if (!takesBack && !corrects && !reopens && begun) return null
  return (
    <details className="sheet">
      <summary>Put right what stands here</summary>
      <div className="stack">
        {takesBack && (
          <ReasonForm
            name="stage.takeBack"
            input={{ stage: stage.id }}
            label={label('stage.takeBack', stage)}
            question="Why it is taken back"
            hint="It stays in the journal."
            stage={stage.id}
          />
        )}
        {corrects && stage.endedAt !== null && <CorrectEnd stage={stage} endedAt={stage.endedAt} />}
        {reopens && (
          <ReasonForm
            name="stage.reopen"
            input={{ stage: stage.id }}
            label={label('stage.reopen', stage)}
            question="Why it is opened again"
            hint="Everything signed off that relied on it comes into doubt; nothing is deleted."
            stage={stage.id}
          />
        )}
        {!begun && <ReportDone stage={stage} own={own} />}
      </div>
    </details>
  )
}

function CorrectEnd({ stage, endedAt }: { readonly stage: Stage; readonly endedAt: string }) {
  const { reader } = useDesk()
  const [wall, setWall] = useState(() => wallTime(endedAt, reader.timeZone))
  const at = instantAt(wall, reader.timeZone)
  return (
    <ReasonForm
      name="stage.correctEnd"
      input={{ stage: stage.id, endedAt: at ?? endedAt }}
      label={label('stage.correctEnd', stage)}
      question="Why it is corrected"
      stage={stage.id}
      ready={at !== null}
    >
      <TextField
        label="Work ended at"
        type="datetime-local"
        value={wall}
        onChange={setWall}
        hint="Cure times and recoat windows are counted from here."
      />
    </ReasonForm>
  )
}

/** A fact is never refused: work that was done outside the gate is entered as done, and stands in doubt. */
function ReportDone({ stage, own }: { readonly stage: Stage; readonly own: boolean }) {
  const { record, reader } = useDesk()
  const [from, setFrom] = useState(() => wallTime(reader.now, reader.timeZone))
  const [to, setTo] = useState(() => wallTime(reader.now, reader.timeZone))
  const [told, setTold] = useState(!own)
  const startedAt = instantAt(from, reader.timeZone)
  const endedAt = instantAt(to, reader.timeZone)
  return (
    <ReasonForm
      name="stage.reportDone"
      input={{
        stage: stage.id,
        startedAt: startedAt ?? '',
        endedAt: endedAt ?? '',
        ...(told && !own ? { told: stage.party } : {}),
      }}
      label={label('stage.reportDone', stage)}
      question="How it came to be done outside the gate"
      hint="It stands in doubt, with what was not met, until it is confirmed."
      stage={stage.id}
      ready={startedAt !== null && endedAt !== null && (own || told)}
    >
      {!own && (
        <TickField
          label={`${partyName(stage.party, record)} told me by phone`}
          checked={told}
          onChange={setTold}
        />
      )}
      <TextField label="Work began at" type="datetime-local" value={from} onChange={setFrom} />
      <TextField label="Work ended at" type="datetime-local" value={to} onChange={setTo} />
    </ReasonForm>
  )
}
