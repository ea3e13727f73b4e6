'use client'
import { useState } from 'react'
import { actorOf } from '@/app/_ui/actor-of.ts'
import { HeldPress } from '@/app/_ui/form/held-press.tsx'
import { TextField, TickField } from '@/app/_ui/form/text-field.tsx'
import { Mark } from '@/app/_ui/mark.tsx'
import { CommandButton } from '@/app/_ui/press/command-button.tsx'
import { Outcome } from '@/app/_ui/press/outcome.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { standsIn } from '@/lib/build-order/own-work.ts'
import { didWork } from '@/lib/gate/did-work.ts'
import { checkConditions } from '@/lib/gate/sign-off.ts'
import { useLive } from '@/lib/live/live-provider.tsx'
import { useCommand } from '@/lib/live/use-command.ts'
import type { Stage } from '@/lib/record/entities/work.ts'
import type { PartyId } from '@/lib/record/ids.ts'
import { instantAt, wallTime } from '@/lib/record/zoned-time.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { listed, partyName, personName } from '@/lib/words/names.ts'
import { sentence } from '@/lib/words/sentence.ts'

/** What the party of a stage presses while it is in work, paused or ended; the countersign once it is signed off. */
export function StagePresses({ stage }: { readonly stage: Stage }) {
  const { record, standing } = useDesk()
  const [toldOn, setToldOn] = useState(false)
  const own = standing.actsFor(stage.party)
  if (stage.state === 'signed off') return <Countersign stage={stage} />
  if (stage.state !== 'in work' && stage.state !== 'paused' && stage.state !== 'ended') return null
  const name = partyName(stage.party, record)
  if (!own && !standing.managesLead) {
    return (
      <div className="sheet">
        <p>
          <b>{name}</b> is at it, and signs it off.
        </p>
      </div>
    )
  }
  const told = own ? undefined : stage.party
  return (
    <section className="stack" aria-label="What can be pressed">
      {!own && (
        <div className="sheet">
          <TickField
            label={`${name} told me by phone`}
            hint="It is marked so until they confirm it. Their sign-off is never entered by phone."
            checked={toldOn}
            onChange={setToldOn}
          />
        </div>
      )}
      {own && <SignOff stage={stage} />}
      {(own || toldOn) && <WorkPresses stage={stage} told={told} />}
    </section>
  )
}

/** Pause, go on, end: presses that can be taken back. */
function WorkPresses({
  stage,
  told,
}: {
  readonly stage: Stage
  readonly told: PartyId | undefined
}) {
  const input = { stage: stage.id, ...(told === undefined ? {} : { told }) }
  const number = stageNumber(stage.number)
  if (stage.state === 'ended') return null
  return (
    <div className="sheet stack">
      {stage.state === 'in work' ? (
        <CommandButton
          name="stage.pause"
          input={input}
          stage={stage.id}
          line
          wide
          done={{
            text: `${number} is paused.`,
            undo: { label: 'Resume', name: 'stage.resume', input },
          }}
        >
          {label('stage.pause', stage)}
        </CommandButton>
      ) : (
        <CommandButton
          name="stage.resume"
          input={input}
          stage={stage.id}
          wide
          done={{
            text: `${number} is in work again.`,
            undo: { label: 'Pause again', name: 'stage.pause', input },
          }}
        >
          {label('stage.resume', stage)}
        </CommandButton>
      )}
      <EndForm stage={stage} told={told} />
    </div>
  )
}

/** The end of work, now or entered late; cure and recoat windows run from it. */
function EndForm({ stage, told }: { readonly stage: Stage; readonly told: PartyId | undefined }) {
  const { reader } = useDesk()
  const press = useCommand('stage.end', undefined, { stage: stage.id })
  const [late, setLate] = useState<string | null>(null)
  const send = () => {
    const endedAt = late === null ? null : instantAt(late, reader.timeZone)
    void press.send({
      stage: stage.id,
      ...(endedAt === null ? {} : { endedAt }),
      ...(told === undefined ? {} : { told }),
    })
  }
  return (
    <form
      className="stack tight"
      onSubmit={(event) => {
        event.preventDefault()
        if (!press.waiting) send()
      }}
    >
      {late !== null && (
        <TextField
          label="Work ended at"
          type="datetime-local"
          value={late}
          onChange={setLate}
          hint="By the shop’s clock. Cure time runs from here."
          required
        />
      )}
      <button type="submit" className="btn btn-line btn-wide" aria-busy={press.waiting}>
        {press.waiting ? 'Sending…' : `${label('stage.end', stage)}${late === null ? ', now' : ''}`}
      </button>
      {late === null && (
        <button
          type="button"
          className="btn btn-line btn-small"
          onClick={() => setLate(wallTime(reader.now, reader.timeZone))}
        >
          It ended earlier
        </button>
      )}
      <Outcome press={press} stage={stage.id} />
    </form>
  )
}

/** The signature of the stage's party, held for a second; what keeps it from being pressed stands above. */
function SignOff({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useDesk()
  const live = useLive()
  const press = useCommand('stage.signOff', undefined, { stage: stage.id })
  const unmet = checkConditions(record, stage)
  const name = personName(reader.person, reader.people)
  const hint = `As ${name} for ${partyName(stage.party, record)}. Keep your thumb down for a second.`
  const send = () =>
    void press.send({
      stage: stage.id,
      ...(stage.state === 'ended' ? {} : { end: { endedAt: live.now() } }),
    })
  return (
    <div className="stack tight">
      {unmet.length > 0 ? (
        <div className="sheet stack tight">
          <h3>
            {label('stage.signOff', stage)} waits for {unmet.length}{' '}
            {unmet.length === 1 ? 'check' : 'checks'}
          </h3>
          <ul className="ruled">
            {unmet.map((condition) => (
              <li key={condition.entity} className="rowmark">
                <Mark name="waiting" />
                <p>
                  <a className="row-link" href={`#${condition.entity}`}>
                    {sentence(condition, record, reader).fact}
                  </a>
                </p>
              </li>
            ))}
          </ul>
        </div>
      ) : (
        <>
          <AfterSignOff stage={stage} />
          <HeldPress
            label={label('stage.signOff', stage)}
            hint={hint}
            waiting={press.waiting}
            onPressed={send}
          />
        </>
      )}
      <Outcome press={press} stage={stage.id} />
    </div>
  )
}

/** What the signature sets going: countersigns asked, a handover prepared. */
function AfterSignOff({ stage }: { readonly stage: Stage }) {
  const { record, reader } = useDesk()
  const countersigns = stage.countersigns.map((party) => partyName(party, record, reader))
  if (countersigns.length === 0 && stage.handoverTo === null) return null
  return (
    <p className="small">
      {countersigns.length > 0 &&
        `After it, ${listed(countersigns, reader.locale)} ${countersigns.length === 1 ? 'is' : 'are'} asked to countersign. `}
      {stage.handoverTo !== null &&
        `It prepares the handover to ${partyName(stage.handoverTo, record, reader)}.`}
    </p>
  )
}

/** A second signature, where this reader's party was asked for one and has not given it. */
function Countersign({ stage }: { readonly stage: Stage }) {
  const { record, reader, standing } = useDesk()
  const press = useCommand('stage.countersign', undefined, { stage: stage.id })
  const given = [...record.signOffs.rows.values()].filter(
    (sign) => sign.stage === stage.id && sign.type === 'countersign' && sign.withdrawnAt === null,
  )
  const missing = stage.countersigns.filter((party) => !given.some((sign) => sign.party === party))
  if (missing.length === 0) return null
  const own = missing.find((party) => standing.actsFor(party))
  const inFor = missing.find((party) => standsIn(actorOf(reader), record, stage, party))
  const party = own ?? inFor
  const didIt = didWork(stage, reader.person)
  if (party === undefined || didIt) {
    return (
      <div className="sheet">
        <p>
          <b>
            {listed(
              missing.map((party) => partyName(party, record)),
              reader.locale,
            )}
          </b>{' '}
          {missing.length === 1 ? 'has' : 'have'} yet to countersign it.
        </p>
      </div>
    )
  }
  return (
    <div className="stack tight">
      <HeldPress
        label={label('stage.countersign', stage)}
        hint={`As ${personName(reader.person, reader.people)} for ${partyName(party, record)}, who did not do this work. Keep your thumb down for a second.`}
        waiting={press.waiting}
        onPressed={() => void press.send({ stage: stage.id, for: party })}
      />
      <Outcome press={press} stage={stage.id} />
    </div>
  )
}
