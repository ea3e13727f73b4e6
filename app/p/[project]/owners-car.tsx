'use client'
import { useProject } from '@/lib/live/project-provider.tsx'
import { NeedsMyYes } from './needs-my-yes.tsx'
import { Places } from './places.tsx'
import { WhatComes } from './what-comes.tsx'
import { WhereItIs } from './where-it-is.tsx'
import { WhoHasWhat } from './who-has-what.tsx'
import { WorkNow } from './work-now.tsx'

/** The owner's car: where it is, what needs a yes, what comes next, who has what. The yes comes early: it is what holds others. */
export function OwnersCar() {
  const { record } = useProject()
  return (
    <>
      <div className="cols cols-main">
        <WhereItIs />
        <NeedsMyYes />
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
