'use client'
import { useOnTheWay } from '@/app/_screen/use-on-the-way.ts'
import { UnsentLine } from '@/app/_ui/unsent-line.tsx'
import { useConnection } from '@/lib/live/live-provider.tsx'
import { useProjectIfAny } from '@/lib/live/project-provider.tsx'
import { useShopPhone } from '@/lib/live/shop-phone/use-shop-phone.ts'
import type { Instant } from '@/lib/record/scalars.ts'
import { ago, moment, sameDay, timeOfDay } from '@/lib/words/dates.ts'
import { doingLine } from '@/lib/words/journal-line.ts'
import type { Place } from '@/lib/words/reader.ts'
import { LiveFace } from './live-face.tsx'

/** Whether what stands here is all there is: live, or as of when; the way out; what others just did. */
export function LiveLine({ place }: { readonly place: Place }) {
  const { link, knownUntil } = useConnection()
  const onTheWay = useOnTheWay()
  const project = useProjectIfAny()
  const isShopPhone = useShopPhone().here !== null
  const said = project?.doing ?? null
  const says = {
    live: 'Live',
    starting: 'Connecting…',
    away: `As of ${asOf(knownUntil, place)}, no network`,
  }[link]
  return (
    <LiveFace
      says={says}
      unsent={<UnsentLine place={place} />}
      account={isShopPhone ? 'This phone' : undefined}
      said={
        onTheWay
          ? 'Fetching the screen…'
          : project !== null &&
            said !== null && (
              <>
                {doingLine(said.doing, said.entities, project.record, project.reader)},{' '}
                {ago(said.doing.at, project.reader)}
              </>
            )
      }
    />
  )
}

const asOf = (until: Instant, place: Place): string =>
  sameDay(until, place.now, place) ? timeOfDay(until, place) : moment(until, place)
