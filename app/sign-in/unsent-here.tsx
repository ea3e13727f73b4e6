'use client'
import { useEffect, useState } from 'react'
import { Notice } from '@/app/_ui/paper.tsx'
import { type UnsentCount, unsentCounts } from '@/lib/live/outbox/unsent-counts.ts'

/** At the door of a phone on which somebody's presses wait: whose, and how many; never what. */
export function UnsentHere() {
  const [counts, setCounts] = useState<readonly UnsentCount[]>([])
  useEffect(() => {
    void unsentCounts().then(setCounts)
  }, [])
  if (counts.length === 0) return null
  return (
    <Notice mark="unsent">
      {counts.map(({ person, name, count }) => (
        <p key={person}>
          Sign in again as <b>{name}</b>: {count === 1 ? '1 press waits' : `${count} presses wait`}{' '}
          on this phone.
        </p>
      ))}
    </Notice>
  )
}
