'use client'
import { useState } from 'react'
import { Notice } from '@/app/_ui/paper.tsx'
import type { Queued } from '@/lib/live/outbox/unsent-store.ts'
import { useQueuePresses } from '@/lib/live/outbox/use-presses-here.ts'
import { needsWords } from '@/lib/words/code-words.ts'

/** A signature that was pressed without signal: its hand signs it now, and all that waits behind it goes on. */
export function SignHeld({ item }: { readonly item: Queued }) {
  const { sign } = useQueuePresses()
  const [waiting, setWaiting] = useState(false)
  if (item.needs === undefined) return null
  const press = async () => {
    setWaiting(true)
    await sign(item)
    setWaiting(false)
  }
  return (
    <Notice mark="device">
      <p>{needsWords[item.needs]}</p>
      <button
        type="button"
        className="btn btn-wide"
        aria-busy={waiting}
        onClick={() => {
          if (!waiting) void press()
        }}
      >
        {item.personName} signs
      </button>
    </Notice>
  )
}
