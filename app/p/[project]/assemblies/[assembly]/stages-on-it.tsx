'use client'
import Link from 'next/link'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import { StageLine } from '@/app/_ui/stage-line.tsx'
import { stagesOn } from '@/lib/gate/indexes.ts'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { Assembly } from '@/lib/record/entities/things.ts'
import type { Stage } from '@/lib/record/entities/work.ts'

/** How many stages to come are shown before the rest is left to the build order. */
const COMING = 4

const underWay: ReadonlySet<string> = new Set([
  'in work',
  'paused',
  'ended',
  'in doubt',
  'reopened',
])

/** What is done on an assembly now, what comes next, and what is behind it. */
export function StagesOnIt({ assembly }: { readonly assembly: Assembly }) {
  const { record } = useProject()
  const stages = stagesOn(record.stages, assembly.id).toSorted((a, b) => a.number - b.number)
  const now = stages.filter(({ state }) => underWay.has(state))
  const coming = stages.filter(({ state }) => state === 'planned')
  const done = stages.filter(({ state }) => state === 'signed off')
  return (
    <section className="sheet stack">
      <Head title="Work on it" note={String(stages.length)} />
      {stages.length === 0 && (
        <EmptyState title="No stage works on it">The lead enters the build order.</EmptyState>
      )}
      <Part title="Now" stages={now} />
      <Part title="Next" stages={coming.slice(0, COMING)} />
      {done.length > 0 && (
        <details>
          <summary>
            {done.length === 1 ? '1 stage is signed off' : `${done.length} stages are signed off`}
          </summary>
          <Part stages={done.toReversed()} />
        </details>
      )}
      {stages.length > 0 && (
        <p>
          <Link
            className="row-link"
            prefetch={false}
            href={projectPath(record.id, `build-order?assembly=${assembly.id}`)}
          >
            In the build order
          </Link>
        </p>
      )}
    </section>
  )
}

function Part({ title, stages }: { readonly title?: string; readonly stages: readonly Stage[] }) {
  if (stages.length === 0) return null
  return (
    <div className="stack tight">
      {title !== undefined && <h3>{title}</h3>}
      <ul className="stack tight">
        {stages.map((stage) => (
          <li key={stage.id}>
            <StageLine stage={stage} />
          </li>
        ))}
      </ul>
    </div>
  )
}
