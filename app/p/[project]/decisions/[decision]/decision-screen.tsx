'use client'
import Link from 'next/link'
import { useState } from 'react'
import { PickList } from '@/app/_ui/form/pick-list.tsx'
import { PressFoot } from '@/app/_ui/form/press-foot.tsx'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { TextField } from '@/app/_ui/form/text-field.tsx'
import { usePress } from '@/app/_ui/form/use-press.ts'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { Head, Stamp } from '@/app/_ui/paper.tsx'
import { useRefusedInput } from '@/app/_ui/press/use-refused-input.ts'
import { StageChip } from '@/app/_ui/stage-chip.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import type { Decision, DecisionOption } from '@/lib/record/entities/money.ts'
import { all } from '@/lib/record/table.ts'
import { day, moment, stampMoment } from '@/lib/words/dates.ts'
import { label, stageNumber } from '@/lib/words/labels.ts'
import { moneyChange } from '@/lib/words/money.ts'
import { atStart, partyName, personName } from '@/lib/words/names.ts'

/** One choice: the question, its options, the press of who is to choose, and what waits for it. */
export function DecisionScreen({ id }: { readonly id: string }) {
  const { record } = useDesk()
  const decision = record.decisions.rows.get(id)
  if (decision === undefined) return <NotHere what="decision" href={`/p/${record.id}/decisions`} />
  return <DecisionDesk decision={decision} />
}

function DecisionDesk({ decision }: { readonly decision: Decision }) {
  const { record, reader, standing } = useDesk()
  const options = all(record.decisionOptions)
    .filter((option) => option.decision === decision.id)
    .toSorted((a, b) => a.position - b.position)
  const chosen = options.find(({ id }) => id === decision.chosen)
  const waits = all(record.stages).filter(
    (stage) => stage.decision === decision.id && stage.removedAt === null,
  )
  const chooses = decision.state === 'asked' && standing.managesFor(decision.chooser)
  const withdraws =
    standing.managesFor(decision.party) ||
    standing.managesLead ||
    (decision.state === 'chosen' && standing.managesFor(decision.chooser))
  return (
    <div className="stack">
      <p className="way">
        <Link href={`/p/${record.id}/decisions`}>All decisions</Link>
      </p>
      <UnsentMark entity={decision.id} />
      <section className="sheet stack">
        <div className="row spread slip-top">
          <div className="stack tight">
            <p className="small">
              {atStart(partyName(decision.party, record, reader))} asked{' '}
              {partyName(decision.chooser, record, reader)}, {moment(decision.askedAt, reader)}
            </p>
            <h2>{decision.question}</h2>
          </div>
          {decision.state === 'chosen' && decision.chosenAt !== null ? (
            <Stamp
              word="Chosen"
              lines={[
                personName(decision.chosenBy, reader.people),
                stampMoment(decision.chosenAt, reader),
              ]}
            />
          ) : (
            <WordMark
              mark={decision.state === 'asked' ? 'held' : 'reopened'}
              word={decision.state === 'asked' ? 'To be decided' : 'Withdrawn'}
            />
          )}
        </div>
        {decision.text !== '' && <p className="prose">{decision.text}</p>}
        {decision.decideBy !== null && decision.state === 'asked' && (
          <p>
            Decide by <b>{day(decision.decideBy, reader)}</b>.
          </p>
        )}
        {!chooses && (
          <ul className="ruled">
            {options.map((option) => (
              <li key={option.id} className="rowend">
                <span>
                  {option.id === chosen?.id ? (
                    <b>
                      <i className="mark m-met" aria-hidden="true" /> {option.text}, chosen
                    </b>
                  ) : (
                    option.text
                  )}
                </span>
                <NetOf option={option} />
              </li>
            ))}
          </ul>
        )}
        {!chooses && decision.state === 'asked' && (
          <p className="small soft">
            The choice is {partyName(decision.chooser, record, reader)}’s; nobody makes it for them.
          </p>
        )}
        {decision.reason !== null && decision.reason !== '' && (
          <p className="prose">“{decision.reason}”</p>
        )}
        {chooses && <Choose decision={decision} options={options} />}
      </section>
      {waits.length > 0 && (
        <section className="sheet stack">
          <Head title="Stages that hang on it" />
          <ul className="ruled">
            {waits.map((stage) => (
              <li key={stage.id} className="rowend">
                <Link className="row-link" href={`/p/${record.id}/stages/${stage.id}`}>
                  {stageNumber(stage.number)} · {stage.name}
                </Link>
                <StageChip stage={stage} />
              </li>
            ))}
          </ul>
        </section>
      )}
      {decision.state !== 'withdrawn' && withdraws && <Withdraw decision={decision} />}
    </div>
  )
}

function NetOf({ option }: { readonly option: DecisionOption }) {
  const { reader } = useDesk()
  if (option.net === null) return null
  return (
    <span className="money">
      {moneyChange(option.net, reader.currency, reader.locale)} before tax
    </span>
  )
}

function Choose({
  decision,
  options,
}: {
  readonly decision: Decision
  readonly options: readonly DecisionOption[]
}) {
  const press = usePress('decision.choose', 'Your choice is kept.')
  const [picked, setPicked] = useState<string | null>(null)
  const [reason, setReason] = useState('')
  useRefusedInput(press.command, (input) => {
    setPicked(options.find(({ id }) => input.is('option', id))?.id ?? null)
    setReason(input.text('reason'))
  })
  const [pressed, setPressed] = useState(false)
  const name = options.find(({ id }) => id === picked)?.text
  return (
    <form
      className="stack"
      onSubmit={(event) => {
        event.preventDefault()
        setPressed(true)
        if (picked === null) return
        void press.send({
          decision: decision.id,
          option: picked,
          ...(reason.trim() === '' ? {} : { reason: reason.trim() }),
        })
      }}
    >
      <PickList
        label="Your choice"
        value={picked}
        onChange={setPicked}
        wrong={pressed && picked === null ? 'Choose one of them.' : undefined}
        options={options.map((option) => ({
          value: option.id,
          title: option.text,
          beside: <NetOf option={option} />,
        }))}
      />
      {options.some(({ net }) => net !== null) && (
        <p className="small">
          Choosing changes no bill: what it costs comes as a change order, with tax and totals, for
          its own yes.
        </p>
      )}
      <TextField label="A word with it, if you like" rows={2} value={reason} onChange={setReason} />
      <PressFoot
        press={press}
        label={name === undefined ? 'Choose' : label('decision.choose', { name })}
        note="It can be taken back until work begins that rests on it."
      />
    </form>
  )
}

const Withdraw = ({ decision }: { readonly decision: Decision }) => (
  <ReasonFold
    sheet
    name="decision.withdraw"
    input={{ decision: decision.id }}
    label={label('decision.withdraw')}
    summary={decision.state === 'chosen' ? 'Take the choice back' : 'Withdraw the question'}
    unsaid="Say why: it stays in the record."
    said="Withdrawn."
  />
)
