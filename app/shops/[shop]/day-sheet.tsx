'use client'
import { useEffect } from 'react'
import type { Asked } from '@/app/_screen/asked.ts'
import { lateDaySheet } from '@/app/_screen/late.ts'
import { NeedsNetwork } from '@/app/_screen/needs-network.tsx'
import { Notice } from '@/app/_ui/paper.tsx'
import type { ProjectView } from '@/lib/command/wire.ts'
import { useLive } from '@/lib/live/live-provider.tsx'
import { daySheetKey } from '@/lib/live/record-keys.ts'
import { useShop } from '@/lib/live/shop-provider.tsx'
import type { Late } from '@/lib/server/for-pages.ts'
import { listed } from '@/lib/words/names.ts'
import { DaySheetScreen } from './day-sheet-screen.tsx'

/** The day sheet over the projects that the server gave; without a network over those that this phone keeps, and says which it lacks. */
export function DaySheet({ source }: Asked) {
  if (source?.kind === 'day sheet') return <ServedSheet late={source.late} />
  if (source?.kind === 'kept day sheet') return <KeptSheet {...source} />
  return (
    <NeedsNetwork what="The day sheet">
      It was not opened on this phone yet. What you have seen of the shop is there.
    </NeedsNetwork>
  )
}

function ServedSheet({ late }: { readonly late: Late }) {
  const live = useLive()
  const { book } = useShop()
  const { projects } = lateDaySheet.use(late)
  // What the phone keeps of the shop, so that the sheet opens without a network.
  useEffect(() => {
    live.query.setQueryData(
      daySheetKey(book.id),
      projects.map(({ record }) => record),
    )
  }, [live, projects, book.id])
  return <DaySheetScreen projects={projects} />
}

function KeptSheet({
  projects,
  missing,
}: {
  readonly projects: readonly ProjectView[]
  readonly missing: readonly string[]
}) {
  const { projects: known, place } = useShop()
  const names = missing.map((id) => known.find((project) => project.id === id)?.name ?? 'a car')
  return (
    <>
      {names.length > 0 && (
        <Notice mark="clock">
          <p>
            <b>Without {listed(names, place.locale)}:</b> this phone does not keep it. Open the day
            sheet again with a signal.
          </p>
        </Notice>
      )}
      <DaySheetScreen projects={projects} />
    </>
  )
}
