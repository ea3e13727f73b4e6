'use client'
import { type ComponentType, useEffect, useState } from 'react'
import { Loading } from '@/app/_ui/loading.tsx'

/** Looks up what this phone keeps of the address that it stands at. The server can't know: it says only that it is looked up. */
export function Shell() {
  const [Kept, setKept] = useState<ComponentType>()
  useEffect(() => {
    void import('./kept-place.tsx').then(({ KeptPlace }) => setKept(() => KeptPlace))
  }, [])
  if (Kept !== undefined) return <Kept />
  return (
    <main className="page stack">
      <Loading what="what this phone keeps" />
    </main>
  )
}
