'use client'
import Link from 'next/link'
import { Notice } from '@/app/_ui/paper.tsx'
import { projectPath } from '@/app/_ui/paths.ts'
import type { ProjectView } from '@/lib/command/wire.ts'
import { StillProject, useProject } from '@/lib/live/project-provider.tsx'
import { CivilDate } from '@/lib/record/scalars.ts'
import { civilDateIn } from '@/lib/record/zoned-time.ts'
import { longDay } from '@/lib/words/dates.ts'
import { BuildOrderScreen } from '../build-order/build-order-screen.tsx'
import { WhoHasWhat } from '../who-has-what.tsx'

/** The record as it stood on a day: nothing in it moves, nothing can be pressed. */
export function AsItStood({
  day,
  view,
}: {
  readonly day: string
  readonly view: ProjectView | null
}) {
  const { record, reader } = useProject()
  const date = CivilDate.safeParse(day)
  const back = (
    <Link className="btn btn-line" href={projectPath(record.id, 'journal')}>
      Back to the journal
    </Link>
  )
  if (view === null || !date.success) {
    return (
      <div className="stack">
        <Notice mark="refused">
          <p>The record has nothing from that day.</p>
        </Notice>
        <div>{back}</div>
      </div>
    )
  }
  if (date.data > civilDateIn(reader.now, reader.timeZone)) {
    return (
      <div className="stack">
        <Notice mark="refused">
          <p>That day is still to come. The record stands as it is now.</p>
        </Notice>
        <div>{back}</div>
      </div>
    )
  }
  return (
    <div className="stack">
      <Notice mark="clock">
        <p>
          <b>As it stood on {longDay(date.data, reader)}.</b> Read only.
        </p>
      </Notice>
      <div>{back}</div>
      <StillProject view={view}>
        <div className="cols cols-main">
          <BuildOrderScreen assembly={null} />
          <WhoHasWhat />
        </div>
      </StillProject>
    </div>
  )
}
