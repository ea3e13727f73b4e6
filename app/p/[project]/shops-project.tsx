'use client'
import Link from 'next/link'
import { EmptyState, Head, Sheet } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { StageLine } from '@/app/_ui/stage-line.tsx'
import { gateOf } from '@/lib/gate/gate.ts'
import { asksOf, stagesOfParty } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import { day } from '@/lib/words/dates.ts'
import { partyName, stageName } from '@/lib/words/names.ts'
import { sentence } from '@/lib/words/sentence.ts'
import { NeedsMyYes } from './needs-my-yes.tsx'
import { Places } from './places.tsx'
import { WhatComes } from './what-comes.tsx'
import { WhoHasWhat } from './who-has-what.tsx'
import { WorkNow } from './work-now.tsx'

/** A project as one of its shops has it: what it can start, what it was asked, what all have in work. */
export function ShopsProject() {
  const { record, reader } = useProject()
  const gate = gateOf(record, reader.now)
  const ready = stagesOfParty(record.stages, reader.view.party).filter(
    (stage) => stage.state === 'planned' && gate.conditions(stage).length === 0,
  )
  return (
    <div className="cols cols-main">
      <div className="stack">
        <Asked />
        <section className="stack tight">
          <Head title="You can start" note={ready.length} />
          {ready.length === 0 && (
            <EmptyState title="Nothing of yours can start now">
              <Link className="row-link" href={projectPath(record.id, 'build-order')}>
                See what waits, and on whom
              </Link>
            </EmptyState>
          )}
          <ul className="stack tight">
            {ready.map((stage) => (
              <li key={stage.id}>
                <StageLine stage={stage} />
              </li>
            ))}
          </ul>
        </section>
        <WorkNow />
        <WhoHasWhat />
      </div>
      <div className="stack">
        <NeedsMyYes />
        <WhatComes />
        <Places project={record.id} />
      </div>
    </div>
  )
}

/** What others asked of this reader's party and that is still not met. */
function Asked() {
  const { record, reader } = useProject()
  const gate = gateOf(record, reader.now)
  const asked = [...record.stages.rows.values()].flatMap((stage) =>
    asksOf(record.asks, stage.id).flatMap((ask) => {
      const condition =
        ask.to === reader.view.party
          ? gate
              .conditions(stage)
              .find((unmet) => unmet.rule === ask.rule && unmet.entity === ask.entity)
          : undefined
      return condition === undefined ? [] : [{ ask, stage, condition }]
    }),
  )
  if (asked.length === 0) return null
  return (
    <Sheet title="Asked of you" note={asked.length}>
      <ul className="ruled">
        {asked.map(({ ask, stage, condition }) => (
          <li key={ask.id}>
            <h3>{sentence(condition, record, reader).fact}</h3>
            <p className="small">
              {partyName(ask.from, record)} asked on {day(ask.at, reader)}
              {ask.text === '' ? '' : `: “${ask.text}”`}
            </p>
            <p className="way">
              <Link href={projectPath(record.id, `stages/${stage.id}`)}>
                It keeps {stageName(stage.id, record)} from starting
              </Link>
            </p>
          </li>
        ))}
      </ul>
    </Sheet>
  )
}
