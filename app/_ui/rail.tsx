'use client'
import Link from 'next/link'
import { usePathname } from 'next/navigation'
import { type ComponentType, useEffect, useState } from 'react'

/** One place a thumb can go. `under`: addresses that lie under it, besides its own. */
export interface Place {
  readonly href: string
  readonly label: string
  readonly under?: readonly string[]
}

/** The places of a project or a shop: at the foot on a phone, on top at a desk. */
export function Rail({ places }: { readonly places: readonly Place[] }) {
  const path = usePathname()
  const current = places.reduce<Place | undefined>((best, place) => {
    const starts = [place.href, ...(place.under ?? [])].some(
      (href) => path === href || path.startsWith(`${href}/`),
    )
    return starts && (best === undefined || place.href.length > best.href.length) ? place : best
  }, undefined)
  return (
    <nav className="rail" aria-label="Places">
      {places.map((place) => (
        <Link
          key={place.href}
          href={place.href}
          prefetch={false}
          aria-current={place === current ? 'page' : undefined}
        >
          {place.label}
        </Link>
      ))}
      <DeskKeys />
    </nav>
  )
}

/** The keys of a desk come to desks only: a phone has no room for them, nor bytes. */
function DeskKeys() {
  const [GoTo, setGoTo] = useState<ComponentType>()
  useEffect(() => {
    if (!matchMedia('(min-width: 900px)').matches) return
    void import('./go-to/go-to.tsx')
      .then((loaded) => setGoTo(() => loaded.GoTo))
      // Without a network the places beside it lead everywhere still.
      .catch(() => undefined)
  }, [])
  return GoTo === undefined ? null : <GoTo />
}
