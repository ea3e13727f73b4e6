'use client'
import { Suspense } from 'react'
import { Loading } from '@/app/_ui/loading.tsx'
import type { Asked } from './asked.ts'
import { lateDaySheet } from './late.ts'
import type { ScreenPath } from './screen-titles.ts'
import { screens } from './screens.tsx'
import { useServed } from './served.ts'

/** The screen at that path, in the page and in the first load nothing but its place. */
export function Screen({ path, asked }: { readonly path: ScreenPath; readonly asked: Asked }) {
  const served = useServed()
  const { Screen: Late } = screens[path]
  if (asked.source?.kind === 'day sheet') lateDaySheet.begin(asked.source.late)
  const screen = <Late {...asked} />
  // What was served stands until its code is here. A boundary would make the server send it apart, behind a waiting line.
  return served ? screen : <Suspense fallback={<Loading what="the screen" />}>{screen}</Suspense>
}
