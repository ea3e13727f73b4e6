'use client'
import { useState } from 'react'
import { actorOf } from '@/app/_ui/actor-of.ts'
import { HeldPress } from '@/app/_ui/form/held-press.tsx'
import { ReasonForm } from '@/app/_ui/form/reason-form.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { Sheet } from '@/app/_ui/paper.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { isNamed, mayClear } from '@/lib/build-order/clear-hold.ts'
import { didWork } from '@/lib/gate/did-work.ts'
import { holdsOf } from '@/lib/gate/indexes.ts'
import { useCommand } from '@/lib/live/use-command.ts'
import type { Hold, Stage } from '@/lib/record/entities/work.ts'
import { instantAt } from '@/lib/record/zoned-time.ts'
import { moment } from '@/lib/words/dates.ts'
import { label } from '@/lib/words/labels.ts'
import { partyName, personName } from '@/lib/words/names.ts'

const isClear = (hold: Hold): boolean => hold.state === 'released' || hold.state === 'waived'

/** Hold and witness points of a stage: who releases or waives them, and the presses for it. */
export function Points({ stage }: { readonly stage: Stage }) {
  const { record } = useDesk()
  const holds = holdsOf(record.holds, stage.id)
  if (holds.length === 0) return null
  const open = holds.filter((hold) => !isClear(hold)).length
  return (
    <Sheet title="Points" note={open === 0 ? 'all clear' : `${open} not clear`}>
      <ul className="ruled">
        {holds.map((hold) => (
          <Point key={hold.id} hold={hold} stage={stage} />
        ))}
      </ul>
    </Sheet>
  )
}

function Point({ hold, stage }: { readonly hold: Hold; readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const witness = hold.point === 'witness'
  const actor = actorOf(reader)
  const named = isNamed(actor, hold)
  const didIt = didWork(stage, reader.person)
  const begun = stage.state !== 'planned' && stage.state !== 'reopened'
  const clears = !isClear(hold) && (begun || witness) && mayClear(actor, record, hold)
  return (
    <li className="rowmark" id={hold.id}>
      <Mark name={witness ? 'witness' : 'held'} />
      <div className="stack tight">
        <h3>
          {witness ? 'Witness point' : 'Hold point'}: {hold.name}
        </h3>
        <p>{whereItStands(hold, partyName(hold.party, record, reader))}</p>
        <p className="small soft">{when(hold, reader)}</p>
        {hold.remark !== null && hold.remark !== '' && <p>“{hold.remark}”</p>}
        {!isClear(hold) && (standing.actsFor(stage.party) || standing.managesLead) && (
          <Invite hold={hold} />
        )}
        {clears && didIt && (
          <p className="small">You did this work; somebody else clears its points.</p>
        )}
        {clears && !didIt && named && <Release hold={hold} begun={begun} />}
        {clears && !didIt && !named && (
          <details>
            <summary>Stand in for {partyName(hold.party, record)}</summary>
            <p className="small">
              Only where that shop has one hand, who did the work and can’t clear it.
            </p>
            <Release hold={hold} begun={begun} />
          </details>
        )}
        {isClear(hold) && (named || hold.clearedBy === reader.person) && (
          <ReasonForm
            name="hold.takeBack"
            input={{ hold: hold.id }}
            label={label('hold.takeBack')}
            question="Why it is taken back"
          />
        )}
      </div>
    </li>
  )
}

function whereItStands(hold: Hold, name: string): string {
  const you = name === 'you'
  switch (hold.state) {
    case 'set':
      return hold.point === 'witness'
        ? `${you ? 'You are' : `${name} is`} to be invited.`
        : `Nobody passes before ${name} ${you ? 'release' : 'releases'} it.`
    case 'invited':
      return `${you ? 'You are' : `${name} is`} invited.`
    case 'released':
      return `Released by ${name}.`
    case 'waived':
      return `Waived by ${name}.`
  }
}

function when(hold: Hold, reader: ReturnType<typeof useDesk>['reader']): string {
  if (hold.clearedAt !== null) {
    return `${moment(hold.clearedAt, reader)}, ${personName(hold.clearedBy, reader.people)}`
  }
  if (hold.visitAt !== null) return `Visit ${moment(hold.visitAt, reader)}`
  return `Set ${moment(hold.setAt, reader)}`
}

/** Says when the point can be seen. */
function Invite({ hold }: { readonly hold: Hold }) {
  const { reader } = useDesk()
  const [open, setOpen] = useState(false)
  const press = useCommand('hold.invite', () => setOpen(false), { hold: hold.id })
  const [wall, setWall] = useState('')
  if (!open) {
    return (
      <div>
        <button type="button" className="btn btn-line btn-small" onClick={() => setOpen(true)}>
          {hold.state === 'invited' ? 'Invite for another time' : label('hold.invite')}
        </button>
      </div>
    )
  }
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        const visitAt = instantAt(wall, reader.timeZone)
        if (press.waiting || visitAt === null) return
        void press.send({ hold: hold.id, visitAt })
      }}
    >
      <TextField
        label="It can be seen at"
        type="datetime-local"
        value={wall}
        onChange={setWall}
        required
      />
      <button type="submit" className="btn" aria-busy={press.waiting}>
        {press.waiting ? 'Sending…' : label('hold.invite')}
      </button>
      <Outcome press={press} />
    </form>
  )
}

/** Lets the work pass: released, or, of a witness point, waived. */
function Release({ hold, begun }: { readonly hold: Hold; readonly begun: boolean }) {
  const { reader } = useDesk()
  const release = useCommand('hold.release', undefined, { hold: hold.id })
  const waive = useCommand('hold.waive', undefined, { hold: hold.id })
  const [remark, setRemark] = useState('')
  const said = remark.trim() === '' ? {} : { remark }
  return (
    <div className="stack tight">
      <TextField label="Remark" rows={2} value={remark} onChange={setRemark} />
      {begun && (
        <HeldPress
          label={label('hold.release')}
          hint={`As ${personName(reader.person, reader.people)}. Keep your thumb down for a second.`}
          waiting={release.waiting}
          onPressed={() => void release.send({ hold: hold.id, ...said })}
        />
      )}
      <Outcome press={release} />
      {hold.point === 'witness' && (
        <>
          <button
            type="button"
            className="btn btn-line btn-wide"
            aria-busy={waive.waiting}
            onClick={() => {
              if (!waive.waiting) void waive.send({ hold: hold.id, ...said })
            }}
          >
            {label('hold.waive')}
          </button>
          <Outcome press={waive} />
        </>
      )}
    </div>
  )
}
