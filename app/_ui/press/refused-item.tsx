'use client'
import { type ReactNode, useState } from 'react'
import { Photos } from '@/app/_ui/photos.tsx'
import { useToast } from '@/app/_ui/toast.tsx'
import type { Queued } from '@/lib/live/outbox/unsent-store.ts'
import type { QueuePresses } from '@/lib/live/outbox/use-presses-here.ts'
import { KEPT_WORDS } from './kept-words.ts'

/** What was refused as it arrived: why, what had been entered, and the presses that send it again or drop it. */
export function RefusedItem({
  item,
  presses,
  children,
}: {
  readonly item: Queued
  readonly presses: QueuePresses
  /** Why the server said no. */
  readonly children: ReactNode
}) {
  const [waiting, setWaiting] = useState(false)
  const toast = useToast()
  const again = async () => {
    setWaiting(true)
    const { status } = await presses.sendAgain(item)
    setWaiting(false)
    if (status === 200) toast({ text: `${item.label}: done.` })
    if (status === 'kept') toast(KEPT_WORDS)
  }
  const drop = async () => {
    const putBack = await presses.drop(item)
    toast({
      mark: 'off',
      text: `${item.label}: dropped.`,
      undo: { label: 'Put it back', press: putBack },
    })
  }
  return (
    <section className="stack tight" aria-label={`Refused: ${item.label}`}>
      {children}
      <Entered item={item} />
      <div className="row">
        <button
          type="button"
          className="btn btn-line"
          aria-busy={waiting}
          onClick={() => void again()}
        >
          {waiting ? 'Sending…' : 'Send it again'}
        </button>
        <button type="button" className="btn btn-line" onClick={() => void drop()}>
          Drop it
        </button>
      </div>
    </section>
  )
}

/** What a press says and what had been entered with it. */
export function Entered({ item }: { readonly item: Queued }) {
  const [home = ''] = item.lanes
  return (
    <div className="stack tight">
      <p>
        <b>{item.label}</b>
      </p>
      {item.entered.map(({ field, value }, n) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: they never move, and two of a list may say the same
        <p key={n} className="small">
          {field}: {value}
        </p>
      ))}
      {home.startsWith('prj_') && (
        <Photos project={home} groups={[{ title: item.label, files: item.files }]} />
      )}
    </div>
  )
}
