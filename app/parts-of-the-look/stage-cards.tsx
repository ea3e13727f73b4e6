'use client'
import { StageLine } from '@/app/_ui/stage-line.tsx'
import { StageCard } from '@/app/p/[project]/stages/[stage]/stage-card.tsx'
import { StillProject, useProject } from '@/lib/live/project-provider.tsx'
import { asLead } from './sample.ts'

/** A stage in work with every kind of check, one that is signed off, and stages in a list. */
export function StageCards() {
  return (
    <StillProject view={asLead}>
      <Card id="stg_ready" />
      <div className="stack">
        <Card id="stg_gearbox" />
        <Lines />
      </div>
    </StillProject>
  )
}

function Card({ id }: { readonly id: string }) {
  const stage = useProject().record.stages.rows.get(id)
  return stage === undefined ? null : <StageCard stage={stage} />
}

function Lines() {
  const { record } = useProject()
  return (
    <ul className="stack tight">
      {[...record.stages.rows.values()].map((stage) => (
        <li key={stage.id}>
          <StageLine stage={stage} note="about 7 h" />
        </li>
      ))}
    </ul>
  )
}
