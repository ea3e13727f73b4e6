'use client'
import { type ComponentType, useEffect, useState } from 'react'
import { catchInstallOffer } from '@/lib/live/service-worker/install-offer.ts'

/** What an installed program does beside its screens. First load carries this line alone: the rest comes once the page is loaded. */
export function AfterLoad() {
  const [Late, setLate] = useState<ComponentType>()
  useEffect(() => {
    catchInstallOffer()
    const load = () =>
      void import('./new-version.tsx').then(
        ({ NewVersion }) => setLate(() => NewVersion),
        () => undefined,
      )
    if (document.readyState === 'complete') load()
    else window.addEventListener('load', load, { once: true })
  }, [])
  return Late === undefined ? null : <Late />
}
