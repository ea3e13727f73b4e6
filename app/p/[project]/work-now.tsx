'use client'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { StageLine } from '@/app/_ui/stage-line.tsx'
import { useProject } from '@/lib/live/project-provider.tsx'
import type { StageState } from '@/lib/record/entities/work.ts'
import { moment } from '@/lib/words/dates.ts'

const atWork: ReadonlySet<StageState> = new Set<StageState>(['in work', 'paused', 'ended'])
const doubted: ReadonlySet<StageState> = new Set<StageState>(['in doubt', 'reopened'])

/** What all shops have in work, and what stands in doubt. */
export function WorkNow() {
  const { record, reader } = useProject()
  const stages = [...record.stages.rows.values()].filter(({ removedAt }) => removedAt === null)
  const work = stages.filter(({ state }) => atWork.has(state))
  const doubt = stages.filter(({ state }) => doubted.has(state))
  return (
    <section className="stack tight">
      <Head title="In work" note={work.length} />
      {work.length === 0 && <EmptyState title="Nothing is in work just now" />}
      <ul className="stack tight">
        {work.map((stage) => (
          <li key={stage.id}>
            <StageLine
              stage={stage}
              note={stage.startedAt === null ? '' : `since ${moment(stage.startedAt, reader)}`}
            />
          </li>
        ))}
      </ul>
      {doubt.length > 0 && (
        <>
          <Head title="In doubt or reopened" note={doubt.length} />
          <ul className="stack tight">
            {doubt.map((stage) => (
              <li key={stage.id}>
                <StageLine stage={stage} note={stage.doubt ?? ''} />
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  )
}
