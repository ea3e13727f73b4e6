'use client'
import Link from 'next/link'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { Head } from '@/app/_ui/paper.tsx'
import { StageChip } from '@/app/_ui/stage-chip.tsx'
import { WordMark } from '@/app/_ui/state-mark.tsx'
import { UnsentMark } from '@/app/_ui/unsent-mark.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { ToldMarks } from '@/app/p/[project]/stages/[stage]/told-marks.tsx'
import type { Part } from '@/lib/record/entities/things.ts'
import { civil, day, moment } from '@/lib/words/dates.ts'
import { stageNumber } from '@/lib/words/labels.ts'
import { money } from '@/lib/words/money.ts'
import { atStart, partyName, personName } from '@/lib/words/names.ts'
import { isLate, partState, promisesOf } from '../part-facts.ts'
import { PartPresses } from './part-presses.tsx'

/** One part: its state, every promise, what waits for it, and the press that is next. */
export function PartScreen({ id }: { readonly id: string }) {
  const { record } = useDesk()
  const part = record.parts.rows.get(id)
  if (part === undefined) return <NotHere what="part" href={`/p/${record.id}/parts`} />
  return <PartDesk part={part} />
}

function PartDesk({ part }: { readonly part: Part }) {
  const { record, reader } = useDesk()
  const promises = promisesOf(record, part.id)
  const { mark, word } = partState(part, isLate(part, promises, civil(reader.now, reader)))
  return (
    <div className="stack">
      <p className="way">
        <Link href={`/p/${record.id}/parts`}>All parts</Link>
      </p>
      <UnsentMark entity={part.id} />
      <div className="cols cols-main">
        <section className="sheet stack">
          <div className="row spread slip-top">
            <h2>{part.name}</h2>
            <WordMark mark={mark} word={word} />
          </div>
          <dl className="facts">
            <Fact what="Number" is={part.number} />
            <Fact what="For" is={atStart(partyName(part.party, record, reader))} />
            <Fact
              what="From"
              is={part.supplier === null ? null : partyName(part.supplier, record, reader)}
            />
            <Fact
              what="Price"
              is={
                part.price === null
                  ? null
                  : `${money(part.price, reader.currency, reader.locale)} before tax`
              }
            />
            <Fact what="Wanted" is={moment(part.wantedAt, reader)} />
            <Fact what="Ordered" is={part.orderedAt && moment(part.orderedAt, reader)} />
            <Fact what="Arrived" is={part.arrivedAt && moment(part.arrivedAt, reader)} />
            <Fact
              what="Inspected"
              is={
                part.inspectedAt &&
                `${moment(part.inspectedAt, reader)}, ${personName(part.inspectedBy, reader.people)}`
              }
            />
            <Fact what="Remark" is={part.remark} />
          </dl>
          <ToldMarks entity={part.id} />
          <Waits part={part} />
        </section>
        <div className="stack">
          <PartPresses part={part} />
          <section className="sheet stack">
            <Head title="Promises" note={String(promises.length)} />
            {promises.length === 0 ? (
              <p className="soft">No day has been promised.</p>
            ) : (
              <ol className="string">
                {promises.map((promise, n) => (
                  <li key={promise.id} className={n < promises.length - 1 ? 'past' : ''}>
                    <h3>{day(promise.date, reader)}</h3>
                    <p className="small">
                      promised by {partyName(promise.by, record, reader)},{' '}
                      {moment(promise.madeAt, reader)}
                      {promise.remark !== '' && ` · ${promise.remark}`}
                    </p>
                    <ToldMarks entity={promise.id} />
                  </li>
                ))}
              </ol>
            )}
          </section>
        </div>
      </div>
    </div>
  )
}

function Fact({ what, is }: { readonly what: string; readonly is: string | null }) {
  if (is === null || is === '') return null
  return (
    <>
      <dt>{what}</dt>
      <dd>{is}</dd>
    </>
  )
}

function Waits({ part }: { readonly part: Part }) {
  const { record } = useDesk()
  const stages = part.stages.flatMap((id) => record.stages.rows.get(id) ?? [])
  if (stages.length === 0) return <p className="soft">No stage waits for it.</p>
  return (
    <div className="stack tight">
      <h3>Stages that wait for it</h3>
      <ul className="ruled">
        {stages.map((stage) => (
          <li key={stage.id} className="rowend">
            <Link className="row-link" href={`/p/${record.id}/stages/${stage.id}`}>
              {stageNumber(stage.number)} · {stage.name}
            </Link>
            <StageChip stage={stage} />
          </li>
        ))}
      </ul>
    </div>
  )
}
