'use client'
import { useProject } from '@/lib/live/project-provider.tsx'
import { NeedsMyYes } from './needs-my-yes.tsx'
import { Places } from './places.tsx'
import { WhatComes } from './what-comes.tsx'
import { WhereItIs } from './where-it-is.tsx'
import { WhoHasWhat } from './who-has-what.tsx'
import { WorkNow } from './work-now.tsx'

/** The owner's car: what needs a yes, where it is, what comes next, who has what. The yes comes first: it is what holds others. */
export function OwnersCar() {
  const { record } = useProject()
  return (
    <>
      <div className="cols cols-main cols-yes">
        <NeedsMyYes />
        <WhereItIs />
      </div>
      <div className="cols cols-main">
        <div className="stack">
          <WorkNow />
          <WhoHasWhat />
        </div>
        <div className="stack">
          <WhatComes />
          <Places project={record.id} owner />
        </div>
      </div>
    </>
  )
}
