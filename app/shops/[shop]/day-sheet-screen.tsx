'use client'
import Link from 'next/link'
import type { ReactNode } from 'react'
import { EmptyState, Head } from '@/app/_ui/paper.tsx'
import { RowList } from '@/app/_ui/row-list.tsx'
import type { ProjectView } from '@/lib/command/wire.ts'
import { type DaySheet, daySheet } from '@/lib/gate/day-sheet.ts'
import { type ProjectHere, ProjectScope, useProjects } from '@/lib/live/project-provider.tsx'
import { ComingLine, OnUsLine, ToldLine, WorkLine } from './day-sheet-lines.tsx'
import { OurFloor } from './our-floor.tsx'
import { ReadyCard } from './ready-card.tsx'
import { groupWaiting, WaitingLines } from './waiting-lines.tsx'

/** A shop's day over all its projects: what it can start first, then what others wait for, then the rest. */
export function DaySheetScreen({ projects }: { readonly projects: readonly ProjectView[] }) {
  const here = useProjects(projects)
  const now = here[0]?.reader.now
  const sheet =
    now === undefined
      ? null
      : daySheet(
          here.map(({ record, view }) => ({ record, party: view.party })),
          now,
        )
  if (sheet === null) {
    return (
      <>
        <OurFloor projects={here} />
        <EmptyState title="No project yet">
          <p>A project stands here as soon as your shop takes part in one.</p>
        </EmptyState>
      </>
    )
  }
  const scoped = (project: string, child: ReactNode): ReactNode => {
    const found = here.find(({ record }) => record.id === project)
    return found === undefined ? null : <Scope here={found}>{child}</Scope>
  }
  return (
    <div className="stack day">
      <div className="cols cols-main">
        <div className="stack">
          <Head title="Can start now" note={sheet.start.length} />
          {sheet.start.length === 0 && <EmptyState title="Nothing can start just now" />}
          <ul className="cols cols-2">
            {sheet.start.map((line) => (
              <li key={line.stage}>{scoped(line.project, <ReadyCard id={line.stage} />)}</li>
            ))}
          </ul>
          <Part title="In work" count={sheet.inWork.length}>
            {sheet.inWork.map((line) => (
              <li key={line.stage} className="rowend">
                {scoped(line.project, <WorkLine id={line.stage} />)}
              </li>
            ))}
          </Part>
          <Part title="Coming to us" count={sheet.coming.length}>
            {byDay(sheet.coming).map((coming) => (
              <li key={`${coming.kind} ${coming.entity}`} className="rowmark due">
                {scoped(coming.project, <ComingLine coming={coming} />)}
              </li>
            ))}
          </Part>
        </div>
        <div className="stack">
          <Part title="Who waits on us" count={sheet.onUs.length}>
            {sheet.onUs.map((line) => (
              <li key={`${line.kind} ${line.entity}`} className="rowmark">
                {scoped(line.project, <OnUsLine line={line} />)}
              </li>
            ))}
          </Part>
          <Part title="Told by phone" count={sheet.told.length}>
            {sheet.told.map((line) => (
              <li key={line.told}>{scoped(line.project, <ToldLine line={line} />)}</li>
            ))}
          </Part>
          <Part title="Waits, and on whom" count={sheet.waits.length}>
            {groupWaiting(sheet.waits).map((group) => (
              <li key={group.key} className="rowmark">
                {scoped(group.first.project, <WaitingLines group={group} />)}
              </li>
            ))}
          </Part>
          <p className="way">
            <Link prefetch={false} href="/sums">
              Bench sums
            </Link>
          </p>
        </div>
      </div>
      <OurFloor projects={here} />
    </div>
  )
}

const Scope = ({
  here,
  children,
}: {
  readonly here: ProjectHere
  readonly children: ReactNode
}) => <ProjectScope here={here}>{children}</ProjectScope>

/** What has a day comes first, by its day. */
const byDay = (coming: DaySheet['coming']): DaySheet['coming'] =>
  coming.toSorted((a, b) => ((a.promised ?? '9') < (b.promised ?? '9') ? -1 : 1))

/** A heading and its list; nothing where the list is empty. */
function Part({
  title,
  count,
  children,
}: {
  readonly title: string
  readonly count: number
  readonly children: ReactNode
}) {
  if (count === 0) return null
  return (
    <section className="stack tight">
      <Head title={title} note={count} />
      <RowList className="sheet ruled">{children}</RowList>
    </section>
  )
}
