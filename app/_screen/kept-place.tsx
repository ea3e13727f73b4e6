'use client'
import { Suspense, useEffect, useState } from 'react'
import { Loading } from '@/app/_ui/loading.tsx'
import { liveOfTab } from '@/lib/live/live-provider.tsx'
import { openPhoneStore } from '@/lib/live/phone/phone-store.ts'
import { phonePerson } from '@/lib/live/phone/whose-phone.ts'
import { Alone } from './alone.tsx'
import type { Asked } from './asked.ts'
import { type Found, findKept } from './find-kept.ts'
import { NotKept } from './not-kept.tsx'
import { type ScreenPath, screenTitles } from './screen-titles.ts'
import { screens } from './screens.tsx'
import { WholeProject } from './whole-project.tsx'
import { WholeShop } from './whole-shop.tsx'

const nothing: Found = { is: 'missing', of: 'page', kept: [] }

/** The screen at this address from what the phone keeps, with its age; once there is a network it goes on live, in its place. */
export function KeptPlace() {
  const [found, setFound] = useState<Found>()
  useEffect(() => {
    let stays = true
    void look().then((what) => stays && setFound(what))
    return () => {
      stays = false
    }
  }, [])
  useEffect(() => {
    if (found?.is === 'screen' || found?.is === 'alone')
      document.title = `${screenTitles[found.path]} · Fettleyard`
  }, [found])
  if (found === undefined) {
    return (
      <main className="page stack">
        <Loading what="what this phone keeps" />
      </main>
    )
  }
  if (found.is === 'alone') return <KeptAlone path={found.path} asked={found.asked} />
  if (found.is !== 'screen') {
    return (
      <Alone locale={navigator.language} now={liveOfTab().now()}>
        <NotKept found={found} />
      </Alone>
    )
  }
  const { frame, path, asked } = found
  const now = liveOfTab().now()
  const { Screen } = screens[path]
  const setting = { locale: navigator.language, now }
  const screen = (
    <Suspense fallback={<Loading what="the screen" />}>
      <Screen {...asked} />
    </Suspense>
  )
  return frame.kind === 'project' ? (
    <WholeProject {...setting} view={frame.view}>
      {screen}
    </WholeProject>
  ) : (
    <WholeShop {...setting} view={frame.view}>
      {screen}
    </WholeShop>
  )
}

/** A screen that stands in no record, whoever's phone it is. */
function KeptAlone({ path, asked }: { readonly path: ScreenPath; readonly asked: Asked }) {
  const { Screen } = screens[path]
  return (
    <Alone locale={navigator.language} now={liveOfTab().now()}>
      <Suspense fallback={<Loading what="the screen" />}>
        <Screen {...asked} />
      </Suspense>
    </Alone>
  )
}

async function look(): Promise<Found> {
  try {
    const phone = await openPhoneStore()
    const found = await findKept(phone, phonePerson(), location)
    phone.close()
    if (found.is === 'screen') {
      const { connection } = liveOfTab()
      connection.recall(found.age.keptAt, found.age.clockAhead)
    }
    return found
  } catch {
    // A window that keeps nothing.
    return nothing
  }
}
