'use client'
import { lazy, type ReactNode, useEffect } from 'react'
import { hearEarlyTouch, replayEarlyTouch } from '@/app/_ui/install/early-touch.ts'
import type { Setting } from '@/lib/live/live-provider.tsx'
import type { Late } from '@/lib/server/for-pages.ts'
import { afterPaint } from './after-paint.ts'
import { lateProject, lateShop } from './late.ts'
import { matchScreen } from './match-screen.ts'
import { screens } from './screens.tsx'

// Where another page leads here, that one listens.
if (typeof window !== 'undefined') hearEarlyTouch(matchScreen(location.pathname) !== null)

/** Begins to fetch the screen with its frame: it would be asked for only once the frame is here. */
function beginScreen(): void {
  if (typeof location === 'undefined') return
  const found = matchScreen(location.pathname)
  if (found !== null) screens[found.path].begin()
}

const LateProject = lazy(async () => {
  beginScreen()
  const { ServedProject } = await afterPaint(() => import('./whole-project.tsx'))
  return { default: ServedProject }
})

const LateShop = lazy(async () => {
  beginScreen()
  const { ServedShop } = await afterPaint(() => import('./whole-shop.tsx'))
  return { default: ServedShop }
})

const LateAlone = lazy(async () => {
  const { Alone } = await afterPaint(() => import('./alone.tsx'))
  return { default: Alone }
})

interface Framed extends Setting {
  readonly children: ReactNode
}

/** All around the screens of a project: its record, live, and the shell. Comes after the first paint. */
export function ProjectFrame(props: Framed & { readonly late: Late }) {
  lateProject.begin(props.late)
  useEffect(replayEarlyTouch, [])
  return <LateProject {...props} />
}

/** All around the screens of a shop. */
export function ShopFrame(props: Framed & { readonly late: Late }) {
  lateShop.begin(props.late)
  useEffect(replayEarlyTouch, [])
  return <LateShop {...props} />
}

/** Around a form that stands in no project and no shop, but sends commands or looks at the clock. */
export function AloneFrame(props: Framed) {
  useEffect(replayEarlyTouch, [])
  return <LateAlone {...props} />
}
