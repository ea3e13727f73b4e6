'use client'
import { useEffect } from 'react'
import type { Asked } from '@/app/_screen/asked.ts'
import { NeedsNetwork } from '@/app/_screen/needs-network.tsx'
import { Notice } from '@/app/_ui/paper.tsx'
import { useLive } from '@/lib/live/live-provider.tsx'
import { daySheetKey } from '@/lib/live/record-keys.ts'
import { useShop } from '@/lib/live/shop-provider.tsx'
import { listed } from '@/lib/words/names.ts'
import { DaySheetScreen } from './day-sheet-screen.tsx'

/** The day sheet over the projects that came with it; without a network over those that this phone keeps, and says which it lacks. */
export function DaySheet({ source }: Asked) {
  const live = useLive()
  const { book, projects, place } = useShop()
  const shown = source?.kind === 'day sheet' ? source : null
  useEffect(() => {
    if (shown !== null && shown.missing.length === 0) {
      live.query.setQueryData(
        daySheetKey(book.id),
        shown.projects.map(({ record }) => record),
      )
    }
  }, [live, shown, book.id])
  if (shown === null) {
    return (
      <NeedsNetwork what="The day sheet">
        It was not opened on this phone yet. What you have seen of the shop is there.
      </NeedsNetwork>
    )
  }
  const missing = shown.missing.map(
    (id) => projects.find((project) => project.id === id)?.name ?? 'a car',
  )
  return (
    <>
      {missing.length > 0 && (
        <Notice mark="clock">
          <p>
            <b>Without {listed(missing, place.locale)}:</b> this phone does not keep it. Open the
            day sheet again with a signal.
          </p>
        </Notice>
      )}
      <DaySheetScreen projects={shown.projects} />
    </>
  )
}
