'use client'
import Link from 'next/link'
import { useConnection } from '@/lib/live/live-provider.tsx'
import { useProjectIfAny } from '@/lib/live/project-provider.tsx'
import { ago, timeOfDay } from '@/lib/words/dates.ts'
import { doingLine } from '@/lib/words/journal-line.ts'
import type { Place } from '@/lib/words/reader.ts'

/** Whether what stands here is all there is: live, or as of when; the way out; what others just did. */
export function LiveLine({ place }: { readonly place: Place }) {
  const { link, knownUntil } = useConnection()
  const project = useProjectIfAny()
  const said = project?.doing ?? null
  return (
    <div className="live-line small">
      <p role="status">
        {link === 'live' && 'Live'}
        {link === 'starting' && 'Connecting…'}
        {link === 'away' && `As of ${timeOfDay(knownUntil, place)}, no network`}
      </p>
      <p>
        <Link className="row-link" prefetch={false} href="/account">
          Your account, sign out
        </Link>
      </p>
      <p className="live-said" aria-live="polite">
        {project !== null && said !== null && (
          <>
            {doingLine(said.doing, said.entities, project.record, project.reader)},{' '}
            {ago(said.doing.at, project.reader)}
          </>
        )}
      </p>
    </div>
  )
}
