'use client'
import Link from 'next/link'
import { useState } from 'react'
import { Mark } from '@/app/_ui/mark.tsx'
import { Entered, RefusedItem } from '@/app/_ui/press/refused-item.tsx'
import { SignHeld } from '@/app/_ui/shop-phone/sign-held.tsx'
import { useToast } from '@/app/_ui/toast.tsx'
import type { Queued } from '@/lib/live/outbox/unsent-store.ts'
import { useQueuePresses } from '@/lib/live/outbox/use-presses-here.ts'
import { moment } from '@/lib/words/dates.ts'
import type { Place } from '@/lib/words/reader.ts'
import { WhyInList } from './why-in-list.tsx'

/** One press that is unsent: what, where, when, its state, and what can be done with it. */
export function UnsentItem({ item, place }: { readonly item: Queued; readonly place: Place }) {
  const presses = useQueuePresses()
  const about = (
    <p className="small soft">
      {item.where} · pressed {moment(item.pressedAt, place)}
      {item.device !== undefined && ` by ${item.personName}`}
    </p>
  )
  const back = (
    <p>
      <Link className="row-link" prefetch={false} href={item.path}>
        Show where it was pressed
      </Link>
    </p>
  )
  if (item.no !== null) {
    return (
      <>
        <p>
          <span className="state st-refused">
            <Mark name="refused" />
            Refused, {moment(item.no.at, place)}
          </span>
        </p>
        {about}
        <RefusedItem item={item} presses={presses}>
          <WhyInList item={item} no={item.no} />
        </RefusedItem>
        {back}
      </>
    )
  }
  return (
    <>
      <p>
        <span className="state st-waiting">
          <Mark name="unsent" />
          Kept on this phone
        </span>
      </p>
      {about}
      <Entered item={item} />
      <SignHeld item={item} />
      <DropWaiting item={item} />
      {back}
    </>
  )
}

/** Takes back what has not gone out: asked once more, since what was pressed after it may rely on it. */
function DropWaiting({ item }: { readonly item: Queued }) {
  const presses = useQueuePresses()
  const toast = useToast()
  const [asked, setAsked] = useState(false)
  if (!asked) {
    return (
      <div>
        <button type="button" className="btn btn-line btn-small" onClick={() => setAsked(true)}>
          Drop it
        </button>
      </div>
    )
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
    <div className="stack tight">
      <p>
        It is never sent then. What you pressed after it goes on, and may be refused without it.
      </p>
      <div className="row">
        <button type="button" className="btn" onClick={() => void drop()}>
          Drop it for good
        </button>
        <button type="button" className="btn btn-line" onClick={() => setAsked(false)}>
          Leave it
        </button>
      </div>
    </div>
  )
}
