'use client'
import { type ReactNode, useEffect } from 'react'
import { EmptyState } from '@/app/_ui/paper.tsx'
import { useConnection } from '@/lib/live/live-provider.tsx'

/** In the place of a screen that the phone has nothing of. It comes by itself once the server can be reached. */
export function NeedsNetwork({
  what,
  children,
}: {
  readonly what: string
  readonly children: ReactNode
}) {
  const { link } = useConnection()
  useEffect(() => {
    if (link === 'live') window.location.reload()
  }, [link])
  return (
    <EmptyState title={`${what} needs a network`}>
      <p>{children}</p>
    </EmptyState>
  )
}
