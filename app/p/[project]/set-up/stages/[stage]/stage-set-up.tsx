'use client'
import Link from 'next/link'
import { ReasonFold } from '@/app/_ui/form/reason-fold.tsx'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { Card } from '@/app/_ui/paper.tsx'
import { StageChip } from '@/app/_ui/stage-chip.tsx'
import { useDesk } from '@/app/_ui/use-desk.ts'
import { label } from '@/lib/words/labels.ts'
import { atStart, partyName } from '@/lib/words/names.ts'
import { Asks } from './asks.tsx'
import { Checks } from './checks.tsx'
import { Describe } from './describe.tsx'
import { Holds } from './holds.tsx'
import { Links } from './links.tsx'
import { Payments } from './payments.tsx'
import { Rework } from './rework/rework.tsx'
import { Steps } from './steps.tsx'

/** One stage as it is set up: what is said of it, what it waits for, its checks, its points. */
export function StageSetUp({ id }: { readonly id: string }) {
  const { record, reader, standing } = useDesk()
  const stage = record.stages.rows.get(id)
  if (stage === undefined || stage.removedAt !== null)
    return <NotHere what="stage" href={`/p/${record.id}/set-up`} />
  const sets = standing.managesLead || standing.managesFor(stage.party)
  return (
    <div className="stack">
      <p className="row way">
        <Link href={`/p/${record.id}/set-up`}>Project set-up</Link>
        <Link href={`/p/${record.id}/stages/${stage.id}`}>The stage itself</Link>
      </p>
      <Card
        number={stage.number}
        title={stage.name}
        under={`${atStart(partyName(stage.party, record, reader))} · set-up`}
      >
        <StageChip stage={stage} />
      </Card>
      {stage.state !== 'planned' && (
        <p className="sheet">
          It is {stage.state}: what others relied on stands. Its group and hours may still change.
        </p>
      )}
      <div className="cols cols-2">
        {sets && (
          <div className="stack">
            <Describe key={stage.id} stage={stage} />
            {stage.state === 'planned' && <Asks key={`asks ${stage.id}`} stage={stage} />}
          </div>
        )}
        <div className="stack">
          <Links stage={stage} sets={sets} />
          {sets && <Rework stage={stage} lead={standing.managesLead} />}
          <Steps stage={stage} sets={sets} />
          <Checks stage={stage} sets={sets} />
          <Payments stage={stage} />
          <Holds stage={stage} sets={standing.managesLead} />
          {standing.managesLead && stage.state === 'planned' && (
            <section className="sheet">
              <ReasonFold
                name="stage.remove"
                input={{ stage: stage.id }}
                label={label('stage.remove', { number: stage.number })}
              />
            </section>
          )}
        </div>
      </div>
    </div>
  )
}
