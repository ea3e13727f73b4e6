'use client'
import { NotHere } from '@/app/_ui/not-here.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Stage } from '@/lib/record/entities/work.ts'
import { AfterTheFact } from './after-the-fact.tsx'
import { Doubt } from './doubt.tsx'
import { FromBench } from './from-bench.tsx'
import { ItsCoat } from './its-coat.tsx'
import { Metal } from './metal.tsx'
import { Notes } from './notes.tsx'
import { Points } from './points.tsx'
import { StageCard } from './stage-card.tsx'
import { StagePresses } from './stage-presses.tsx'
import { Start } from './start.tsx'
import { WhatHangsOnIt } from './what-hangs-on-it.tsx'

/** One stage: its card, what keeps it, what is to be pressed now, what hangs on it. */
export function StageScreen({ id }: { readonly id: string }) {
  const { record } = useProject()
  const stage = record.stages.rows.get(id)
  if (stage === undefined) {
    return <NotHere what="stage" href={projectPath(record.id, 'build-order')} />
  }
  const toStart = stage.removedAt === null && isToStart(stage)
  return (
    <>
      <FromBench stage={stage} />
      {toStart && (
        <>
          <StageCard stage={stage} />
          <Start stage={stage} />
          <div className="cols cols-2">
            <Notes on={stage.id} />
            <div className="stack">
              <ItsCoat stage={stage} />
              <WhatHangsOnIt stage={stage} />
              <Points stage={stage} />
              <AfterTheFact stage={stage} />
            </div>
          </div>
        </>
      )}
      {!toStart && (
        <div className="cols cols-main">
          <StageCard stage={stage} />
          <div className="stack">
            <Doubt stage={stage} />
            <StagePresses stage={stage} />
            <Metal stage={stage} />
            <ItsCoat stage={stage} />
            <Points stage={stage} />
            <WhatHangsOnIt stage={stage} />
            <Notes on={stage.id} />
            <AfterTheFact stage={stage} />
          </div>
        </div>
      )}
    </>
  )
}

/** A reopened stage starts again through the same gate. */
const isToStart = (stage: Stage): boolean => stage.state === 'planned' || stage.state === 'reopened'
